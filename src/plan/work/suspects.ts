import { isCovered } from '../../checks/finding.ts';
import { ANOTHER_GRADE } from '../../checks/grades/gradeFindings.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { IMPLAUSIBLE } from '../../checks/slips/implausible.ts';
import { IMPOSSIBLE } from '../../checks/slips/impossible.ts';
import { leavesOf } from '../../checks/value/route.ts';

/**
 * A value that the check takes for a slip of the pen, or for that of a part whose size nobody stated, or that is worked out from
 * one: no metal is cut for it.
 */
export interface Suspect {
  readonly row: Row;
  /** Why, as the check says it; undefined where it is only worked out from one. */
  readonly why: string | undefined;
  /** What makes an end of it: a second reading, the right figure in place of one that cannot be, or the size of the part. */
  readonly settledBy: 'reading' | 'figure' | 'size';
}

const SETTLED_BY: Readonly<Record<string, Suspect['settledBy']>> = {
  [IMPLAUSIBLE.code]: 'reading',
  [IMPOSSIBLE.code]: 'figure',
  [ANOTHER_GRADE.code]: 'size',
};

export function suspectsOf(state: StateReport): readonly Suspect[] {
  const slips = state.findings.filter(({ code }) => code in SETTLED_BY);
  const isSlip = (measure: string, at: Row['position']): boolean => isCovered(measure, at, slips);
  return state.rows.flatMap((row): readonly Suspect[] => {
    const { characteristic, position, routes } = row;
    const [judged] = routes;
    if (judged === undefined) return [];
    const own = slips.find((each) => isCovered(characteristic.id, position, [each]));
    if (own !== undefined) return [{ row, why: own.message, settledBy: SETTLED_BY[own.code] ?? 'reading' }];
    const leaves = leavesOf(judged.route);
    return leaves.some((leaf) => isSlip(leaf.characteristic.id, leaf.position))
      ? [{ row, why: undefined, settledBy: 'reading' }]
      : [];
  });
}
