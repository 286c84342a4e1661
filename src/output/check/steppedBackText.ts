import type { SteppedBack } from '../../checks/value/steppedBack.ts';
import { namedAt } from '../../layout/naming.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { visible } from '../terminal/visible.ts';
import { wrap } from '../terminal/wrap.ts';

/** Readings from before work on their part: named in one line, and with `--detail` one by one. */
export function steppedBackLines(readings: readonly SteppedBack[], style: TextStyle): readonly string[] {
  if (readings.length === 0) return [];
  const heading = 'from before work, kept and not judged';
  const lines = style.detail
    ? [...wrap(heading, style.width), ...readings.flatMap((each) => readingLines(each, style))]
    : wrap(`${heading}: ${positionsText(readings)} (--detail lists them)`, style.width);
  return lines.map((line) => style.paint.faint(line));
}

const readingLines = (
  { label, position, written, work, place }: SteppedBack,
  { width }: TextStyle,
): readonly string[] => {
  const where = `${visible(place.path)}:${place.line}:${place.column}`;
  const done = `then ${visible(work.work)} on ${visible(work.on.name)}`;
  return wrap(
    `${visible(namedAt(label, position))}  ${written.map(visible).join(', ')}  ${done}  ${where}`,
    width - 2,
  ).map((line, index) => `${index === 0 ? '  ' : '      '}${line}`);
};

/** `cylinder bore 1, 3; piston diameter 3`. */
function positionsText(readings: readonly SteppedBack[]): string {
  const positions = new Map<string, Set<string>>();
  for (const { label, position } of readings) {
    positions.set(label, (positions.get(label) ?? new Set()).add(visible(position.name)));
  }
  return [...positions].map(([label, all]) => `${label} ${[...all].join(', ')}`).join('; ');
}
