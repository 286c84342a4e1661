import {
  absolute,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  subtract,
  toDecimal,
} from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { Opinion } from './opinion.ts';
import type { Expectation } from './trailingDigits.ts';

/** So far from what was expected, in band widths or as a share of it, a reading looks like a slip. */
const BAND_WIDTHS = fraction(10);
const SHARE = parseDecimal('0.05');

interface Slip {
  readonly words: string;
  readonly undo: (value: Fraction) => Fraction;
}

const times = (factor: string) => (value: Fraction) => multiply(value, parseDecimal(factor));
const over = (factor: string) => (value: Fraction) => divide(value, parseDecimal(factor));

const SLIPS: readonly Slip[] = [
  { words: 'decimal point moved', undo: over('10') },
  { words: 'decimal point moved', undo: times('10') },
  { words: 'decimal point missing', undo: over('1000') },
  { words: 'decimal point missing', undo: over('10000') },
  { words: 'millimetres for inches', undo: over('25.4') },
  { words: 'inches for millimetres', undo: times('25.4') },
];

/** A reading in `unit` that is nothing like what was expected, with the slip that would explain it. */
export function doubtOf(value: Fraction, expected: Expectation, unit: Unit): Opinion | undefined {
  const allowed = allowance(expected);
  const off = (each: Fraction): Fraction => absolute(subtract(each, expected.reference));
  if (compare(off(value), allowed) <= 0) return undefined;
  const slip = SLIPS.find(({ undo }) => compare(off(undo(value)), allowed) <= 0);
  const near = toDecimal(expected.reference, expected.decimals);
  const meant =
    slip === undefined ? '' : `: ${slip.words}? ${toDecimal(slip.undo(value), expected.decimals)}`;
  const message = `about ${near} ${unit.name} was expected${meant}`;
  return { severity: 'warning', word: 'slip?', message };
}

function allowance({ reference, bandWidth }: Expectation): Fraction {
  const share = multiply(absolute(reference), SHARE);
  if (bandWidth === undefined) return share;
  const widths = multiply(bandWidth, BAND_WIDTHS);
  return compare(widths, share) > 0 ? widths : share;
}
