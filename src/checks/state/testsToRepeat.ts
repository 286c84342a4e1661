import { shortName } from '../../layout/naming.ts';
import { type Finding, finding } from '../finding.ts';
import type { Row } from '../judge/row.ts';
import { UNMEASURED } from '../judge/session.ts';
import { type TestedIn, workSinceTest } from './workSinceTest.ts';

/** Tests of a run, after which work on their part may have cracked it: each is said once, with all places. */
export function testsToRepeat(rows: readonly Row[], around: TestedIn): readonly Finding[] {
  const [last] = around.run.slice(-1);
  if (last === undefined) return [];
  const tests = rows.filter(({ characteristic: { outcomes } }) => outcomes !== undefined);
  return [...new Set(tests.map(({ characteristic }) => characteristic))].flatMap((test) => {
    const asked = tests.flatMap((row): readonly Asked[] => {
      const done = row.characteristic === test ? workSinceTest(row, around) : undefined;
      return done === undefined ? [] : [{ row, done }];
    });
    if (asked.length === 0) return [];
    const severity = last.stage === 'rebuild' ? 'warning' : 'remark';
    return [finding(UNMEASURED, last.start, messageOf(test.label, asked), { measure: test.id, severity })];
  });
}

/** Passed before work that may have cracked its part: it says nothing of the part as it is. What failed is cracked still. */
export const isVoidTest = (row: Row, around: TestedIn): boolean =>
  row.characteristic.outcomes !== undefined &&
  row.judgement.verdict === 'ok' &&
  workSinceTest(row, around) !== undefined;

interface Asked {
  readonly row: Row;
  /** `rod 2 straightened`. */
  readonly done: string;
}

/** `rod crack test 2, 3 of 2026-03-01: rods straightened since; test again`. */
function messageOf(label: string, asked: readonly Asked[]): string {
  const places = asked.map(({ row }) => row.position).filter(({ family }) => !family.isSingle);
  const days = new Set(
    asked.flatMap(({ row }) => row.routes.slice(0, 1).map(({ route }) => route.readIn.date)),
  );
  const done = new Set(asked.map((each) => each.done));
  const test = [label, places.map(shortName).join(', ')].filter(Boolean).join(' ');
  return `${test} of ${[...days].join(' and ')}: ${[...done].join(', ')} since; test again`;
}
