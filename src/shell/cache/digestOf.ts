import { crypto } from '../process/lateModules.ts';

/** Of plain data; bytes in it count as what they hold. */
export function digestOf(value: unknown): string {
  const hash = crypto().createHash('sha256');
  if (isBytes(value)) hash.update('bytes ').update(value.value);
  else hash.update(JSON.stringify(value));
  return hash.digest('base64url');
}

/** What a store answers where a file can be read. */
const isBytes = (value: unknown): value is { readonly value: Uint8Array } =>
  typeof value === 'object' && value !== null && 'value' in value && value.value instanceof Uint8Array;
