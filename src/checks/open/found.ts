import type { Observation, Remedy } from '../../documents/session/observations.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const OPEN: FindingKind = {
  code: 'found/open',
  severity: 'warning',
  means:
    'Something was found that is to be renewed, machined or held back, and no session says that it was dealt with. For a part that is to be renewed it is an error.',
  matters: 'What was seen at teardown is forgotten by the time the engine is closed up.',
  usually:
    'When it is done, say so: `replaced:`, `machined:` or `work:` on that part, or `found: [{ on: …, is: …, do: reuse, by: … }]` where it was decided to keep it.',
  example: 'main 2 shell lower: wiped to copper; to be renewed',
};

export const foundKinds: readonly FindingKind[] = [OPEN];

const TO_DO: Readonly<Record<Remedy, string | undefined>> = {
  renew: 'to be renewed',
  machine: 'to be machined',
  hold: 'held back until it is decided',
  reuse: undefined,
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
      const seen = `${on.join(', ')}: ${is}; ${todo}${by === undefined ? '' : ` (${by})`}`;
      return [finding(OPEN, place, seen, remedy === 'renew' ? { severity: 'error' } : {})];
    });
