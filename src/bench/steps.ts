import type { Engine } from '../documents/assemble.ts';
import type { Stage } from '../documents/session/stage.ts';
import { STEP } from '../layout/family.ts';
import type { Position } from '../layout/position.ts';

/** Before it is taken apart an engine is turned once as it came. */
const AS_RECEIVED = 'as received';

/**
 * The steps after which the crankshaft is turned: those that limits name, then the crankshaft alone and each piston as
 * it goes in. At teardown and in service nothing is being fitted.
 */
export function plannedSteps(engine: Engine, measure: string, stage: Stage): readonly Position[] {
  const { layout } = engine.document;
  return stepNames(engine, measure, stage).flatMap((name) => layout.at(STEP, [name]) ?? []);
}

function stepNames(engine: Engine, measure: string, stage: Stage): readonly string[] {
  if (stage === 'teardown' || stage === 'service') return [AS_RECEIVED];
  const named = engine.limits.flatMap((document) =>
    (document.limits.get(measure)?.at ?? []).flatMap(({ path: [first] }) => first?.key ?? []),
  );
  const pistons = engine.document.layout.namesAlong('cylinder').map((cylinder) => `piston ${cylinder}`);
  return [...new Set(['crankshaft', ...named.filter((step) => !pistons.includes(step)), ...pistons])];
}
