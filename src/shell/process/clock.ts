/** Today's date where the bench stands, `YYYY-MM-DD`. */
export function today(now: Date = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * Milliseconds since some moment. Node's `performance` would say the same, but brings a dozen modules of node that are
 * compiled anew in each process.
 */
export const elapsedMs = (): number => Number(process.hrtime.bigint()) / 1e6;
