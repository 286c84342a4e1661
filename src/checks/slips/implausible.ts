import type { FindingKind } from '../finding.ts';

export const IMPLAUSIBLE: FindingKind = {
  code: 'reading/implausible',
  severity: 'warning',
  means:
    'The reading differs from its limits, its nominal size and similar readings by more than wear explains, and a slip of the pen would explain it: digits swapped, misread or left out; the decimal point moved; one inch or one turn of the micrometer too much or too little; the wrong unit or scale; a radius for a diameter; the wrong sign; cubic inches for cubic centimetres; the reading of another part; another figure (hot lash for cold lash, the travel of a rocked valve for its stem clearance); a whole list off by one amount; hours that run backwards; damage that goes as deep as a whole step, where a tenth of that is usual. The message names the value that was meant, or lists the values that are possible. It is an error where the value as written is out; then the message also has what follows from it.',
  matters: 'A slip can make a good part look worn, or hide a worn part.',
  usually:
    'Measure again, in a session of its own or a second block: what is read alike within the error of both instruments is no slip, and its verdict stands. If it was a slip, correct it and keep what was written: `{ value: 2.8734, was: 2.8374, why: misread }`.',
  example:
    'main journal diameter 2: written 2.8742: the reading of crankpin diameter 2; about 3.2478 in is expected here',
};

export const slipKinds: readonly FindingKind[] = [IMPLAUSIBLE];
