import type { Place } from '../../diagnostic/place.ts';
import { type Finding, type FindingKind, finding, type Severity } from '../finding.ts';

const CONFLICT: FindingKind = {
  code: 'part/conflict',
  severity: 'error',
  means:
    'The documents contradict each other about the part with this mark. Error: it is in two engines at once. Warning: a worn size was measured less worn later, its hours run backwards, or a piston reads otherwise than the stock says of its mark.',
  matters:
    'Readings of another part may be counted as readings of this one, and its wear is worked out from them.',
  usually:
    'Look at the mark on the part. Then correct `fitted:`, or `from:` in its own document; write the work that was done; or write `hours_from:` where the hour meter was replaced. Of a piston measure it again as well: the stock may be wrong.',
  example:
    'crankshaft K4471 is fitted in Crane from 2026-03-14, and Pump has it since 2026-02-03 (engines/pump/sessions/2026-02-03-rebuild.yaml:5:3): no document says that it was taken out',
};

export const partConflictKinds: readonly FindingKind[] = [CONFLICT];

export const partConflict = (place: Place, message: string, severity: Severity = 'error'): Finding =>
  finding(CONFLICT, place, message, { severity });
