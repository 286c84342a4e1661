import { toNumber } from '../../../quantity/fraction.ts';
import { unitNamed } from '../../../quantity/units.ts';

/** 16.387: no two chambers of an engine differ by a tenth of that. */
const CUBIC = toNumber(unitNamed('in3').factor) / toNumber(unitNamed('cc').factor);

/** What was written for what, and what brings it back. */
export const CUBIC_SLIPS = [
  { factor: CUBIC, words: 'cubic inches written as cubic centimetres' },
  { factor: 1 / CUBIC, words: 'cubic centimetres written as cubic inches' },
] as const;
