import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { neighbours } from '../../../layout/relate.ts';
import type { PlanContext } from '../context.ts';

/** Of a step beside a liner that does not stand out as it should how that stands: the step comes right with it. */
export function unevenWith(
  { characteristic, position }: Row,
  context: PlanContext,
): Characteristic | undefined {
  const { engine, state } = context;
  if (characteristic.id !== 'liner_protrusion_step') return undefined;
  const reached = [position, ...neighbours(engine.document.layout, position)];
  return state.rows.find(
    (row) =>
      row.characteristic.id === 'liner_protrusion' &&
      reached.includes(row.position) &&
      (row.judgement.verdict === 'out' || row.judgement.verdict === 'worn'),
  )?.characteristic;
}
