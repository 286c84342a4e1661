import type { Characteristic } from '../../characteristics/characteristic.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row } from '../judge/row.ts';

const OWN_ID: FindingKind = {
  code: 'characteristic/own',
  severity: 'warning',
  means:
    "A characteristic of the shop's own has the id of a built-in one. The program uses the shop's own, everywhere.",
  matters:
    'Nothing of the built-in one is used: not how it is worked out, not its part, not the figures that follow from it.',
  usually: 'Remove it from `characteristics:` and use the built-in one, or give it another id.',
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
