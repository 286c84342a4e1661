import type { Part, Parts } from '../../layout/part.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Span } from '../yaml/node.ts';
import { type Grade, gradeText } from './grade.ts';

/** Ground smaller or bored larger; of what is bought for another part, as that one is made. */
const wayOf = ({ sized }: Part, parts: Parts): 'under' | 'over' | undefined =>
  sized?.made ?? parts.find(sized?.fits ?? '')?.sized?.made;

/** A size on the wrong side of standard is a slip: no bore is smaller when it was bored. A shell may be larger outside. */
export function reportWrongWay(
  part: Part,
  grade: Grade,
  span: Span,
  parts: Parts,
  context: DocumentContext,
): boolean {
  const way = wayOf(part, parts);
  const is = grade.by.n === 0n ? undefined : grade.by.n < 0n ? 'under' : 'over';
  if (way === undefined || is === undefined || is === way || part.sized?.liesIn !== undefined) return false;
  const written = gradeText(grade);
  const meant = written.replace(is, way);
  report(
    context,
    'value',
    span,
    `${part.plural} are made ${way} standard size, and this says ${written}`,
    `write ${meant}`,
  );
  return true;
}
