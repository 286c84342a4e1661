import type { Characteristic } from '../../characteristics/characteristic.ts';
import { type Fraction, least } from '../../quantity/fraction.ts';
import { halvesAt } from '../grades/madeSize.ts';
import { foundAt } from './found.ts';
import { gapsOf, isLeftOut } from './gaps.ts';
import { positionsIn, type Row, rowOf, type SessionView } from './row.ts';

/** The rows of a characteristic: every position with a value, and those whose limits decide and have none. */
export function rowsOf(characteristic: Characteristic, view: SessionView): readonly Row[] {
  const found = positionsIn(characteristic, view).flatMap((position) =>
    halvesAt(view.engine, view.session, characteristic, position).map((half) =>
      foundAt(characteristic, position, half, view),
    ),
  );
  // Most of what could be measured is not: nothing of it is worked out further.
  if (found.every(({ routes }) => routes.length === 0) && !isLeftOut(characteristic, view)) return [];
  const rows = found.map((each) => rowOf(characteristic, each, view));
  const gaps = gapsOf(rows, characteristic, view);
  const isMeasured = rows.some(({ routes }) => routes.length > 0);
  // Of what was measured nowhere it is enough to say that, unless all of it was left out on purpose.
  if (!isMeasured && [...gaps.values()].some(({ judgement }) => judgement.verdict === 'missing')) return [];
  const lastDigit = finestDigit(rows);
  return rows.flatMap((row) => {
    const shown = row.routes.length > 0 ? row : gaps.get(row);
    return shown === undefined ? [] : [{ ...shown, lastDigit }];
  });
}

function finestDigit(rows: readonly Row[]): Fraction | undefined {
  const digits = rows.flatMap((row) => row.routes[0]?.route.lastDigit ?? []);
  return digits.length === 0 ? undefined : least(digits);
}
