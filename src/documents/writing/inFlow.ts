/** A value as YAML's flow style writes it. */
export function inFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inFlow).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return value === null ? '~' : String(value);
  const entries = Object.entries(value).map(([key, each]) => `${key}: ${inFlow(each)}`);
  return `{ ${entries.join(', ')} }`;
}
