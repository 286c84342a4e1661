import type { Row } from '../../checks/judge/row.ts';
import type { Stage } from '../../documents/session/stage.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { placesText } from '../work/placesText.ts';

/** Positions of one characteristic that were left out on purpose, for one reason. */
export interface LeftOut {
  /** `main bearing clearance 3, 4`. */
  readonly what: string;
  readonly reason: string;
  readonly stage: Stage;
}

export function leftOutOf(rows: readonly Row[], layout: Layout): readonly LeftOut[] {
  const groups = new Map<string, LeftOut & { readonly label: string; readonly at: Position[] }>();
  const left = rows.filter(({ judgement }) => judgement.verdict === 'left out');
  const own = new Set(left.map(({ characteristic: { id } }) => id));
  for (const { characteristic, position, notTaken } of left) {
    // What is worked out from a reading is left out with it.
    if (notTaken === undefined || (notTaken.of !== characteristic.id && own.has(notTaken.of))) continue;
    const { label } = characteristic;
    const { reason } = notTaken;
    const { stage } = notTaken.session;
    const key = JSON.stringify([label, reason, stage]);
    const at = groups.get(key)?.at ?? [];
    if (!at.includes(position)) at.push(position);
    groups.set(key, { label, at, what: `${label} ${placesText(at, layout)}`.trim(), reason, stage });
  }
  return [...groups.values()].map(({ what, reason, stage }) => ({ what, reason, stage }));
}
