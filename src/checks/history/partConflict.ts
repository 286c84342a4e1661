import type { Place } from '../../diagnostic/place.ts';
import { type Finding, type FindingKind, finding, type Severity } from '../finding.ts';

const CONFLICT: FindingKind = {
  code: 'part/conflict',
  severity: 'error',
  means:
    'What documents say of a part by its mark cannot all be true: it is in two engines at once, or, as a warning, a worn size grew back, or its hours run backwards.',
  matters: 'The history of another part is taken for this one, and wear is worked out from it.',
  usually:
    'Look at the mark; write `fitted:` for the part that is there instead, `from:` in its own document, the work that was done, or `hours_from:` where a meter was replaced.',
  example:
    'crankshaft K4471 is fitted in Crane from 2026-03-14, and Pump has it since 2026-02-03 (engines/pump/sessions/2026-02-03-rebuild.yaml:5:3): no document says that it came out',
};

export const partConflictKinds: readonly FindingKind[] = [CONFLICT];

export const partConflict = (place: Place, message: string, severity: Severity = 'error'): Finding =>
  finding(CONFLICT, place, message, { severity });
