import type { Observation, Remedy } from '../../documents/session/observations.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
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

const TO_DO: Readonly<Record<Remedy, string>> = {
  renew: 'to be renewed, and no session says that it was',
  machine: 'to be machined, and no session says that it was',
  hold: 'held back, and no session says what was decided',
  reuse: 'to be used again, and nobody says who decided: write by:',
};

/** Said in the session that saw it, while it is open. */
export const foundFindings = (
  { observations }: SessionDocument,
  open: ReadonlySet<Observation>,
): readonly Finding[] =>
  observations
    .filter((each) => open.has(each))
    .flatMap(({ on, is, remedy, by, place }) => {
      const todo = remedy && TO_DO[remedy];
      if (todo === undefined) return [];
      const seen = `${on.join(', ')}: ${is}${by === undefined ? '' : ` (${by})`}; ${todo}`;
      return [finding(OPEN, place, seen, remedy === 'renew' ? { severity: 'error' } : {})];
    });
