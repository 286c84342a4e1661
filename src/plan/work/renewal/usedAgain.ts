import { dependsOn, isAt } from '../../../checks/history/dependsOn.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { isDecidedReuse } from '../../../documents/session/observations.ts';
import type { PartAt } from '../../../layout/readPart.ts';
import type { PlanContext } from '../context.ts';
import { renewedOfSmallEnd } from './smallEnd.ts';

/** Whether somebody who is named found fit for use, in the run, what a figure depends on. */
export const isFoundFit = ({ characteristic, position }: Row, context: PlanContext): boolean =>
  foundFit(context).some((part) =>
    dependsOn(characteristic, position, part, context.registry, context.engine.document.layout),
  );

/** Inside its last limits, and of a part that somebody decided to use again: no work is asked for. */
export function isUsedAgain(row: Row, context: PlanContext): boolean {
  const { judgement, characteristic, position } = row;
  const { registry, engine } = context;
  if (judgement.verdict !== 'worn' && judgement.verdict !== 'off target') return false;
  const ids = [characteristic.of, renewedOfSmallEnd(row, context)?.id].flatMap((id) => id ?? []);
  return foundFit(context).some((part) =>
    ids.some((id) => isAt(id, position, part, registry, engine.document.layout)),
  );
}

const foundFit = ({ state: { run } }: PlanContext): readonly PartAt[] =>
  run.flatMap((session) =>
    session.observations.flatMap((each) => (isDecidedReuse(each, session) ? each.parts : [])),
  );
