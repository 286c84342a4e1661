import { type Line, line } from '../escape/line.ts';
import { hanging } from '../terminal/hanging.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import type { Section } from './page.ts';

/** `1  grind main journals 1 to 7      must`: how pressing a job is stands at the edge of the page. */
export function jobHead(
  title: string,
  { number, urgency }: NonNullable<Section['job']>,
  width: number,
  { paint }: TextStyle,
): readonly Line[] {
  const mark = `${String(number).padStart(2)}  `;
  const [first = '', ...rest] = hanging(mark, title, width - urgency.length - 2, '');
  const gap = ' '.repeat(Math.max(2, width - widthOf(first) - urgency.length));
  const colour = urgency === 'must' ? paint.bad : urgency === 'should' ? paint.notice : paint.faint;
  return [line`${paint.strong(first)}${gap}${colour(urgency)}`, ...rest];
}
