import { type EngineReport, unitsFor } from '../../checks/judge/report.ts';
import { foundText } from '../../checks/open/found.ts';
import type { BrokenDocument } from '../../documents/assemble.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import { namesOrSome, plural } from '../../quantity/words.ts';
import { openBoxes } from './boxes.ts';
import type { Closing } from './closing.ts';
import { outText } from './outText.ts';

/** All that is open, a sentence each, the gravest first. */
export function openTexts(closing: Closing, { engine }: EngineReport): readonly string[] {
  const unitFor = unitsFor(engine);
  return [
    ...closing.broken.map(notTakenText),
    ...closing.findings.filter(isOfTheEngine).map(({ message }) => message),
    ...closing.rows.map((row) => `${outText(row, unitFor)}: ${row.judgement.verdict}`),
    ...closing.found.map(foundText),
    ...closing.findings.filter((each) => !isOfTheEngine(each)).map(({ message }) => message),
    ...closing.unmeasured.map(({ label }) => `limits, and not measured: ${label}`),
    ...closing.untightened.map((each) => `${jointText(each)} is not tightened`),
    ...closing.undecided.map((row) => `${outText(row, unitFor)}: used again, and nobody says who decided so`),
    ...closing.unproven.map((row) => `${outText(row, unitFor)}: known by others' figures alone`),
    ...openBoxes(closing.boxes).map((what) => `not confirmed: ${what}`),
  ];
}

/** Rather than of how it was measured, tightened or written down. */
const isOfTheEngine = ({ code }: Closing['findings'][number]): boolean =>
  !OF_RECORDS.some((area) => code.startsWith(area));

const OF_RECORDS: readonly string[] = ['torque/', 'concession/', 'instrument/overdue', 'source/unstated'];

export const labelsOf = (characteristics: Closing['unmeasured']): string =>
  namesOrSome(
    characteristics.map(({ label }) => label),
    'characteristics',
  );

const jointText = ({ joint, name }: TorqueDocument): string => `${joint.sequence.joint} (${name})`;

/** `engines/pump/sessions/rebuild.yaml has 2 errors and is not taken`. */
export const notTakenText = ({ path, errors }: BrokenDocument): string =>
  `${path} has ${plural(errors, 'error')} and is not taken`;
