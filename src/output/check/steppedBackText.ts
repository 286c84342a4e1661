import type { SteppedBack } from '../../checks/value/steppedBack.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';

/** Readings from before work on their part: named in one line, and with `--detail` one by one. */
export function steppedBackLines(readings: readonly SteppedBack[], style: TextStyle): readonly Line[] {
  if (readings.length === 0) return [];
  const heading = 'from before work, kept and not judged';
  const lines = style.detail
    ? [...wrap(heading, style.width), ...readings.flatMap((each) => readingLines(each, style))]
    : wrap(`${heading}: ${positionsText(readings)} (--detail lists them)`, style.width);
  return lines.map(style.paint.faint);
}

const readingLines = (
  { label, position, written, work, place }: SteppedBack,
  { width }: TextStyle,
): readonly string[] => {
  const where = `${place.path}:${place.line}:${place.column}`;
  const done = `then ${work.work} on ${work.on.name}`;
  return wrap(`${namedAt(label, position)}  ${written.join(', ')}  ${done}  ${where}`, width - 2).map(
    (line, index) => `${index === 0 ? '  ' : '      '}${line}`,
  );
};

/** `cylinder bore 1, 3; piston diameter 3`. */
function positionsText(readings: readonly SteppedBack[]): string {
  const positions = new Map<string, Set<string>>();
  for (const { label, position } of readings) {
    positions.set(label, (positions.get(label) ?? new Set()).add(position.name));
  }
  return [...positions].map(([label, all]) => `${label} ${[...all].join(', ')}`).join('; ');
}
