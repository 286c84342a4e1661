import { amountText, printingOf } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { type FollowUpState, followUpText } from '../../checks/open/followUps.ts';
import type { Unit } from '../../quantity/units.ts';

/** `compression pressure 3, at least 90 psi: 95 psi on 2026-04-02`: a promise and what met it. */
export function closedText(
  { followUp, closedBy, metBy }: FollowUpState,
  unitFor: (row: Row) => Unit,
): string {
  const [judged] = metBy?.routes ?? [];
  if (metBy === undefined || judged === undefined) return followUpText(followUp);
  return `${followUpText(followUp)}: ${amountText(judged, printingOf(metBy, unitFor))} on ${closedBy?.date}`;
}
