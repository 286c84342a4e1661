/** Today's date where the bench stands, `YYYY-MM-DD`. */
export function today(now: Date = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
