import type { Row } from '../../checks/judge/row.ts';
import { bandsElsewhere, temperatureOf } from '../../checks/judge/warmBands.ts';

/** `limits at 70 degF`, and which of them were stated elsewhere; empty where none of them states a temperature. */
export function warmthText({ limits: { inForce } }: Row): readonly string[] {
  if (Object.keys(inForce.temperatures).length === 0) return [];
  const moved = bandsElsewhere(inForce).map(([name, { text }]) => `${name} converted from ${text}`);
  return [[`limits at ${temperatureOf(inForce).text}`, ...moved].join(', ')];
}
