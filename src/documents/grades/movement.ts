import { add, divide, type Fraction, fraction, multiply, subtract, ZERO } from '../../quantity/fraction.ts';
import { type Grade, STANDARD } from './grade.ts';

/**
 * What a size is of its part, and so how it moves with the part's grade. Form, clearances and gaps are none of these:
 * they stay as they are.
 */
export type Dimension =
  /** A journal, pin, stem or lifter and the hole it is made for, a bore and its piston, an insert's outside and its hole, a housing. */
  | 'size'
  | 'shell wall'
  /** With the shells in; of one shell each half takes half of its own grade. */
  | 'bore with shells'
  /** Over the two thrust washers; one washer. */
  | 'washer set'
  | 'washer';

/** The grade of a part in the engine. The halves of a pair of shells may differ; all else has one grade, in both. */
export interface PartGrade {
  readonly upper: Grade;
  readonly lower: Grade;
  /** Of shells for a housing that was bored out: how much larger they are outside. */
  readonly outside: Grade;
}

export const wholly = (grade: Grade): PartGrade => ({ upper: grade, lower: grade, outside: STANDARD });

export type Half = 'upper' | 'lower';

/** How far a size lies from that of a standard part. */
export function movement(of: Dimension, grade: PartGrade, half: Half = 'upper'): Fraction {
  const { upper, lower, outside } = grade;
  switch (of) {
    case 'size':
      return upper.by;
    case 'shell wall':
      return halved(subtract(outside.by, grade[half].by));
    case 'bore with shells':
      return add(halved(upper.by), halved(lower.by));
    case 'washer set':
      return overBoth(upper);
    case 'washer':
      return halved(overBoth(upper));
  }
}

const halved = (by: Fraction): Fraction => (by.n === 0n ? ZERO : divide(by, fraction(2)));

/** Washers are sold by how much thicker each of them is, or both together. */
const overBoth = ({ by, of }: Grade): Fraction => (of === 'set' ? by : multiply(by, fraction(2)));
