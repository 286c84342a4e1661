import type { SteppedBack } from '../../../checks/value/steppedBack.ts';
import { namedAt } from '../../../layout/naming.ts';

/** Readings from before work on their part: named in one line, and where details were asked for one by one. */
export interface SteppedBackView {
  /** Empty where there are none. */
  readonly heading: string;
  readonly readings: readonly string[];
}

export function steppedBackView(readings: readonly SteppedBack[], detail: boolean): SteppedBackView {
  const heading = 'from before work, kept and not judged';
  if (readings.length === 0) return { heading: '', readings: [] };
  if (detail) return { heading, readings: readings.map(readingText) };
  return { heading: `${heading}: ${positionsText(readings)} (--detail lists them)`, readings: [] };
}

function readingText({ label, position, written, work, place }: SteppedBack): string {
  const where = `${place.path}:${place.line}:${place.column}`;
  return `${namedAt(label, position)}  ${written.join(', ')}  then ${work.work} on ${work.on.name}  ${where}`;
}

/** `cylinder bore 1, 3; piston diameter 3`. */
function positionsText(readings: readonly SteppedBack[]): string {
  const positions = new Map<string, Set<string>>();
  for (const { label, position } of readings) {
    positions.set(label, (positions.get(label) ?? new Set()).add(position.name));
  }
  return [...positions].map(([label, all]) => `${label} ${[...all].join(', ')}`).join('; ');
}
