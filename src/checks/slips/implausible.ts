import type { FindingKind } from '../finding.ts';

export const IMPLAUSIBLE: FindingKind = {
  code: 'reading/implausible',
  severity: 'warning',
  means:
    'The reading is farther from its limits, its nominal size and its like than wear explains, in the way that a slip of the pen is: digits swapped or misread, one dropped, the decimal point moved, an inch or a turn of the micrometer out, the wrong unit or scale, a radius for a diameter, the sign of a height, cubic inches for cubic centimetres, the reading of another part, a figure taken for another (lash hot for cold, the rock of a valve for its clearance); or a whole list is out by the same amount. The value that was meant is named where one alone is plausible. An error where the value is out as it was read: what follows from it is said in the same finding. Hours that run backwards are reported as well.',
  matters: 'A slip that looks like a worn part costs a part; one that hides a worn part costs an engine.',
  usually:
    'Measure again. Put it right with its trace, `{ value: 2.8734, was: 2.8374, why: misread }`, or leave it where it is so.',
  example:
    'main journal diameter 2: written 2.8742: the reading of crankpin diameter 2; about 3.2478 in is expected here',
};

export const slipKinds: readonly FindingKind[] = [IMPLAUSIBLE];
