import type { Observation, Remedy } from '../../documents/session/observations.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const OPEN: FindingKind = {
  code: 'found/open',
  severity: 'warning',
  means:
    'Something was found, the part is to be renewed, machined or held back, and no session says that this was done; or it is to be used again, and nobody says who decided. It is an error where the part is to be renewed.',
  matters: 'What was seen at the teardown is easily forgotten before the engine is closed up.',
  usually:
    'When it is done, write `replaced:`, `machined:` or `work:` of that part. Where it was decided to keep the part, write `found: [{ on: …, is: …, do: reuse, by: … }]`.',
  example: 'main 2 shell lower: wiped to copper; to be renewed, and no session says that it was',
};

export const foundKinds: readonly FindingKind[] = [OPEN];

/** What is to become of what was seen. */
const REMEDY_WORDS: Readonly<Record<Remedy, string>> = {
  renew: 'to be renewed',
  machine: 'to be machined',
  hold: 'held back',
  reuse: 'to be used again, and nobody says who decided',
};

const OPEN_WORDS: Readonly<Record<Remedy, string>> = {
  renew: ', and no session says that it was',
  machine: ', and no session says that it was',
  hold: ', and no session says what was decided',
  reuse: ': write by:',
};

/** `main 3 shell lower: turned in its housing, to be renewed`; of several things that they all are. */
export const foundText = (seen: Observation): string =>
  `${seen.on.join(', ')}: ${seen.is}, ${remedyText(seen)}`;

const remedyText = ({ on, remedy }: Observation): string =>
  `${on.length > 1 ? 'each ' : ''}${remedy === undefined ? 'not decided yet' : REMEDY_WORDS[remedy]}`;

/** Of what a session saw what is left open. */
export const foundFindings = (open: readonly Observation[]): readonly Finding[] =>
  open.flatMap((each) => {
    const { on, is, remedy, by, place } = each;
    if (remedy === undefined) return [];
    const seen = `${on.join(', ')}: ${is}${by === undefined ? '' : ` (${by})`}; ${remedyText(each)}${OPEN_WORDS[remedy]}`;
    return [finding(OPEN, place, seen, remedy === 'renew' ? { severity: 'error' } : {})];
  });
