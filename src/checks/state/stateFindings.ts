import type { Unit } from '../../quantity/units.ts';
import { type Finding, sortFindings } from '../finding.ts';
import { concessionFindings, concessionKinds } from '../findings/concessions.ts';
import { conditionFindings, conditionKinds } from '../findings/conditions/conditions.ts';
import { figuresOfUnlikeReadings, unlikeReadingFindings } from '../findings/conditions/unlikeReadings.ts';
import { distanceKinds } from '../findings/distances.ts';
import { ownFormulaKinds } from '../findings/ownFormulas.ts';
import { readingFindings, readingKinds } from '../findings/readings.ts';
import { spreadFindings, spreadKinds } from '../findings/spread.ts';
import { markedSizeFindings } from '../history/markedSizes.ts';
import { partConflictKinds } from '../history/partConflict.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { type JudgedSession, sessionKinds, unitOfRow, unmeasured } from '../judge/session.ts';
import { followUpKinds } from '../open/followUps.ts';
import { impossibleFindings, impossibleKinds } from '../slips/impossible.ts';
import { oneFindingForOneCause } from '../slips/oneCause.ts';
import { sessionsBehind } from './sessionsBehind.ts';

/** What is said of rows as they stand, and not again as each session found them. */
const OF_ROWS: ReadonlySet<string> = new Set(
  [
    ...readingKinds,
    ...concessionKinds,
    ...conditionKinds,
    ...spreadKinds,
    ...impossibleKinds,
    ...sessionKinds,
    ...partConflictKinds,
  ].map(({ code }) => code),
);

/** What was measured, and gives no value for want of distances, is not called unmeasured beside that. */
const MEASURED_IN_VAIN: ReadonlySet<string> = new Set(distanceKinds.map(({ code }) => code));

/** A session that weighs one new rod has no spread, and the state has one with the others. */
const WITHOUT_VALUE: ReadonlySet<string> = new Set(ownFormulaKinds.map(({ code }) => code));

/** Said of a session, and about a reading of a later one. */
const PROMISED: ReadonlySet<string> = new Set(followUpKinds.map(({ code }) => code));

/** What there is to say of the rows of a state, and of how the readings behind them were taken. */
export function stateFindings(
  view: SessionView,
  rows: readonly Row[],
  run: readonly JudgedSession[],
): readonly Finding[] {
  const { engine } = view;
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  const taken = run.flatMap((each) => findingsThatBear(each, rows));
  const unlike = figuresOfUnlikeReadings(view);
  const findings = [
    ...rows.flatMap((row) => readingFindings(row, unitFor)),
    ...concessionFindings(rows, view.concessions, unitFor),
    ...conditionFindings(rows),
    ...markedSizeFindings(rows, view, unitFor),
    ...unlikeReadingFindings(unlike),
    ...impossibleFindings(rows, unitFor),
    ...spreadFindings(rows, taken, view, unitFor),
    ...unmeasured(view, rows, [...taken.filter(({ code }) => MEASURED_IN_VAIN.has(code)), ...unlike]),
    ...taken,
  ];
  return sortFindings(oneFindingForOneCause(findings, rows));
}

/** Of a session's findings those about readings that still count, and those about no single reading. */
const findingsThatBear = ({ session, taken }: JudgedSession, rows: readonly Row[]): readonly Finding[] =>
  taken
    .filter(({ code, covers }) => covers !== undefined || !OF_ROWS.has(code))
    .filter(({ code, measure, at }) => {
      if (PROMISED.has(code)) return true;
      const about = rows.filter(
        ({ characteristic, position }) =>
          characteristic.id === measure && (at === undefined || position === at),
      );
      if (WITHOUT_VALUE.has(code)) return about.length === 0;
      return about.length === 0 || about.some((row) => sessionsBehind(row).has(session));
    });
