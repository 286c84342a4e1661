import type { Row } from '../../checks/judge/row.ts';
import { compare } from '../../quantity/fraction.ts';

/** Of what is out before what is worn, and of the figure that comes first, the place that is farthest past its limit. */
export function worstOf(rows: readonly Row[]): Row | undefined {
  const past = rows.filter(({ judgement }) => judgement.past !== undefined);
  const first = past.find(({ judgement }) => judgement.verdict === 'out') ?? past[0];
  const alike = rows.filter(
    ({ characteristic, judgement }) =>
      characteristic === first?.characteristic && judgement.verdict === first.judgement.verdict,
  );
  return alike.reduce((most, row) => (most !== undefined && isFarther(row, most) ? row : most), first);
}

const isFarther = ({ judgement: { past: a } }: Row, { judgement: { past: b } }: Row): boolean =>
  a !== undefined && (b === undefined || compare(a.by, b.by) > 0);
