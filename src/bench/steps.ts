import type { Engine } from '../documents/assemble.ts';
import type { Stage } from '../documents/session/stage.ts';
import type { Position } from '../layout/position.ts';
import { usualSteps } from '../layout/usualSteps.ts';

/** Before it is taken apart an engine is turned once as it came. */
const AS_RECEIVED = 'as received';

/**
 * The steps after which the crankshaft is turned: those that limits name, then the crankshaft alone and each piston as
 * it goes in. At teardown and in service nothing is being fitted.
 */
export function plannedSteps(engine: Engine, measure: string, stage: Stage): readonly Position[] {
  const { layout } = engine.document;
  return stepNames(engine, measure, stage).map((name) => layout.step(name));
}

function stepNames(engine: Engine, measure: string, stage: Stage): readonly string[] {
  if (stage === 'teardown' || stage === 'service') return [AS_RECEIVED];
  const named = engine.limits.flatMap((document) =>
    (document.limits.get(measure)?.at ?? []).flatMap(({ path: [first] }) => first?.key ?? []),
  );
  const [first, ...pistons] = usualSteps(engine.document.layout);
  return [...new Set([first ?? [], named.filter((step) => !pistons.includes(step)), pistons].flat())];
}
