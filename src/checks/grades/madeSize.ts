import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import { type Dimension, type Half, movement, type PartGrade } from '../../documents/grades/movement.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import { type MadeSize, STANDARD_SIZE } from '../../documents/limits/gradedBands.ts';
import { type LimitsInForce, limitsInForce } from '../../documents/limits/precedence.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { Unit } from '../../quantity/units.ts';
import { gradeInForce, isAnySizeStated, type Moment } from './gradeInForce.ts';

/** The size to which the part that is measured was made, and who says so. */
export interface FittedSize extends MadeSize {
  /** `0.010 under`, `0.010 under upper, 0.011 under lower`. */
  readonly text: (unit: Unit) => string;
  /** The part whose grade was stated where it is not the measured one: then it is assumed. */
  readonly assumedFrom: Part | undefined;
  /** Said of it, or of what it fits; else it is taken for standard. */
  readonly isKnown: boolean;
}

const STANDARD: FittedSize = {
  ...STANDARD_SIZE,
  text: () => 'std',
  assumedFrom: undefined,
  isKnown: false,
};

/** When a session was taken; of a pair of shells whose halves differ, of one half. */
export function fittedSize(
  engine: Engine,
  moment: Moment,
  { of, dimension }: Sized,
  position: Position | undefined,
  half?: Half,
): FittedSize {
  const part = partOf(engine, of);
  if (dimension === undefined || part === undefined || position === undefined) return STANDARD;
  if (!isAnySizeStated(engine, moment)) return STANDARD;
  const { grade, from } = gradeInForce(engine, moment, part, position);
  const sources = sidesOf(dimension, half).map((side) => from[side]);
  if (sources.every((source) => source === undefined)) return STANDARD;
  return {
    grade: rowOf(dimension, grade, half),
    by: movement(dimension, grade, half),
    text: (unit) => textOf(dimension, grade, half, unit),
    assumedFrom: sources.find((source) => source !== undefined && source !== 'stated'),
    isKnown: true,
  };
}

/** What is moved by the size of a part. */
type Sized = Pick<Characteristic, 'of' | 'dimension'>;

const partOf = ({ parts }: Engine, id: string | undefined): Part | undefined =>
  id === undefined ? undefined : parts.find(id);

/** Which figures of its part a dimension goes by. */
const sidesOf = (of: Dimension, half: Half = 'upper'): readonly (keyof PartGrade)[] =>
  of === 'shell wall' ? [half, 'outside'] : of === 'bore with shells' ? ['upper', 'lower'] : ['upper'];

/** The limits of one characteristic at one position when a session was taken, for the size that was fitted then. */
export const limitsOfFitted = (
  engine: Engine,
  moment: Moment,
  characteristic: Characteristic,
  position: Position | undefined,
  half?: Half,
): LimitsInForce =>
  limitsInForce(
    limitsOn(engine.limits, moment?.date),
    engine.document.layout,
    characteristic,
    position,
    fittedSize(engine, moment, characteristic, position, half),
  );

/** Shells whose halves differ are judged one half at a time. */
export function halvesAt(
  engine: Engine,
  moment: Moment,
  { of, dimension }: Sized,
  position: Position,
): readonly (Half | undefined)[] {
  const part = partOf(engine, of);
  if (dimension !== 'shell wall' || part === undefined) return WHOLE;
  const { upper, lower } = gradeInForce(engine, moment, part, position).grade;
  return sameGrade(upper, lower) ? WHOLE : HALVES;
}

const WHOLE: readonly (Half | undefined)[] = [undefined];
const HALVES: readonly Half[] = ['upper', 'lower'];

/** A maker's table has rows for one size: none for halves that differ, nor for shells that differ inside and outside. */
function rowOf(of: Dimension, { upper, lower, outside }: PartGrade, half: Half = 'upper'): Grade | undefined {
  const inside = half === 'upper' ? upper : lower;
  if (of === 'bore with shells') return sameGrade(upper, lower) ? upper : undefined;
  if (of !== 'shell wall' || outside.by.n === 0n) return inside;
  return inside.by.n === 0n ? outside : undefined;
}

function textOf(of: Dimension, grade: PartGrade, half: Half | undefined, unit: Unit): string {
  const { upper, lower, outside } = grade;
  const inside =
    half !== undefined || sameGrade(upper, lower)
      ? gradeText(half === 'lower' ? lower : upper, unit)
      : `${gradeText(upper, unit)} upper, ${gradeText(lower, unit)} lower`;
  const parts = outside.by.n === 0n || of !== 'shell wall' ? [] : [`${gradeText(outside, unit)} outside`];
  return [...(upper.by.n === 0n && parts.length > 0 ? [] : [inside]), ...parts].join(', ');
}
