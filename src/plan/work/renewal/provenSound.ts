import { workSinceTest } from '../../../checks/state/workSinceTest.ts';
import type { Part } from '../../../layout/part.ts';
import type { PlanContext } from '../context.ts';
import { isCrackTest } from './cracked.ts';

/** Whether a part passed its crack test, and nothing was done to it since that may have cracked it. */
export function isProvenSound({ state: { rows, run }, registry, engine }: PlanContext, part: Part): boolean {
  const around = { run, parts: registry.parts, layout: engine.document.layout };
  const tests = rows.filter(
    ({ characteristic }) => characteristic.of === part.id && isCrackTest(characteristic),
  );
  return (
    tests.length > 0 &&
    tests.every((row) => row.judgement.verdict === 'ok' && workSinceTest(row, around) === undefined)
  );
}
