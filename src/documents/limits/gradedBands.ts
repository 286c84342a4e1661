import { namesIn } from '../../formula/names.ts';
import { type Fraction, ZERO } from '../../quantity/fraction.ts';
import { type Grade, STANDARD, sameGrade } from '../grades/grade.ts';
import { movedAmount } from '../grades/movedAmount.ts';
import type { Band, BandName, LimitValue } from './bands.ts';
import type { LimitEntry } from './limitEntry.ts';

/** The size that a part was made to, as the limits of one of its dimensions ask for it. */
export interface MadeSize {
  /** The row of a maker's table that is meant; none where the halves of a pair differ. */
  readonly grade: Grade | undefined;
  /** How far the dimension lies from that of a standard part. */
  readonly by: Fraction;
}

export const STANDARD_SIZE: MadeSize = { grade: STANDARD, by: ZERO };

export const isStandard = ({ grade, by }: MadeSize): boolean => grade === STANDARD && by.n === 0n;

/** Whether the limits of a size are printed, or those of a standard part were moved. */
export type GradeRule = 'stated' | 'moved';

/** Of all bands together: moved where any of them was. */
export const ruleOf = ({
  rules,
}: {
  readonly rules: Readonly<Partial<Record<BandName, GradeRule>>>;
}): GradeRule => (Object.values(rules).includes('moved') ? 'moved' : 'stated');

export interface GradedBand {
  readonly band: Band;
  readonly rule: GradeRule;
  readonly source: string | undefined;
}

/** A band of a part of some size: its maker's row, else that of a standard part moved as far as the size is. */
export function gradedBand(
  entry: LimitEntry,
  name: BandName,
  { grade, by }: MadeSize,
): GradedBand | undefined {
  if (name === 'last') return lastBand(entry);
  const row = grade && entry.sizes.find((each) => sameGrade(each.grade, grade));
  const stated = row?.bands[name];
  if (stated !== undefined) return { band: stated, rule: 'stated', source: row?.source };
  const standard = standardBand(entry, name);
  if (standard === undefined) return undefined;
  return by.n === 0n
    ? { band: standard, rule: 'stated', source: undefined }
    : { band: movedBand(standard, by), rule: 'moved', source: undefined };
}

/** What a part may never go beyond does not move with its size. */
const lastBand = ({ bands: { last } }: LimitEntry): GradedBand | undefined =>
  last && { band: last, rule: 'stated', source: undefined };

const standardBand = ({ bands, sizes }: LimitEntry, name: BandName): Band | undefined =>
  bands[name] ?? sizes.find((each) => sameGrade(each.grade, STANDARD))?.bands[name];

const movedBand = ({ min, max }: Band, by: Fraction): Band => ({
  ...(min === undefined ? {} : { min: movedLimit(min, by) }),
  ...(max === undefined ? {} : { max: movedLimit(max, by) }),
});

/** A formula that names sizes or readings sees those of the part that is fitted: it comes out moved by itself. */
function movedLimit(limit: LimitValue, by: Fraction): LimitValue {
  if (limit.kind === 'formula') return namesIn(limit.formula).length > 0 ? limit : { ...limit, movedBy: by };
  return movedAmount(limit, by);
}
