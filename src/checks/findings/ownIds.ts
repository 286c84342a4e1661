import type { Characteristic } from '../../characteristics/characteristic.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row } from '../judge/row.ts';

const OWN_ID: FindingKind = {
  code: 'characteristic/own',
  severity: 'warning',
  means:
    "A shop adds a characteristic under the id of a built-in one. The shop's is used, here and wherever it is named.",
  matters:
    'What the built-in one knows is gone with it: how it is worked out, its part, and the figures that follow from it.',
  usually: 'Take it out of `characteristics:` and use the built-in one, or give it an id of its own.',
  example: "piston_clearance is the shop's own: the built-in characteristic of that id is not used",
};

export const ownIdKinds: readonly FindingKind[] = [OWN_ID];

/** Said of what the session measured. */
export function ownIdFindings(rows: readonly Row[]): readonly Finding[] {
  const measured = new Set<Characteristic>(rows.map(({ characteristic }) => characteristic));
  return [...measured].flatMap(({ id, standsForOurs }) => {
    if (standsForOurs === undefined) return [];
    const message = `${id} is the shop's own: the built-in characteristic of that id is not used`;
    return [finding(OWN_ID, standsForOurs, message, { measure: id })];
  });
}
