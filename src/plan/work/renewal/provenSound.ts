import type { Row } from '../../../checks/judge/row.ts';
import type { Part } from '../../../layout/part.ts';
import type { PlanContext } from '../context.ts';
import { isCrackTest } from './cracked.ts';

/** Whether a part passed its crack test, and nothing of it was cut since: cutting can crack it. */
export function isProvenSound({ state: { rows, run }, registry }: PlanContext, part: Part): boolean {
  const within = registry.parts.within(part);
  const isCutSince = ({ routes: [judged] }: Row): boolean =>
    judged !== undefined &&
    run
      .slice(run.indexOf(judged.route.readIn) + 1)
      .some(({ partChanges }) =>
        partChanges.some(
          ({ how, parts }) => how === 'machined' && parts.some((at) => within.includes(at.part)),
        ),
      );
  const tests = rows.filter(
    ({ characteristic }) => characteristic.of === part.id && isCrackTest(characteristic),
  );
  return tests.length > 0 && tests.every((row) => row.judgement.verdict === 'ok' && !isCutSince(row));
}
