import { compare, type Fraction, negate, ZERO } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Amount, type DocumentContext, parseAmount } from '../amount.ts';
import type { Span } from '../yaml/node.ts';

/** How far from standard a part was made: nought is standard, below nought under. In the base unit. */
export interface Grade {
  readonly by: Fraction;
  /** As it was typed; a standard size has none. */
  readonly size: Pick<Amount, 'written' | 'unit'> | undefined;
  /** Of thrust washers: the size of each of the two, or of the set. */
  readonly of: 'each' | 'set' | undefined;
}

export const STANDARD: Grade = { by: ZERO, size: undefined, of: undefined };

export const sameGrade = (a: Grade, b: Grade): boolean => compare(a.by, b.by) === 0 && a.of === b.of;

/** `std`, `0.010 under`, `0.25 mm over`, `0.005 over each`; undefined, told already, where its size has no unit. */
export function parseGrade(text: string, span: Span, context: DocumentContext): Grade | undefined {
  if (text === 'std') return STANDARD;
  const [, size, way, of] = /^(.+) (under|over)(?: (each|set))?$/.exec(text) ?? [];
  const amount = size === undefined ? undefined : parseAmount(size, span, 'length', context);
  if (amount === undefined) return undefined;
  const by = way === 'over' ? amount.amount : negate(amount.amount);
  return { by, size: amount, of: of === 'each' || of === 'set' ? of : undefined };
}

/** `0.010 under`; with its unit where that is not the one in which everything beside it is. */
export function gradeText({ by, size, of }: Grade, unit?: Unit): string {
  if (size === undefined || by.n === 0n) return 'std';
  const [digits = ''] = size.written.split(' ');
  const withUnit =
    unit === undefined || unit.name === size.unit.name ? size.written : `${digits} ${size.unit.name}`;
  return [withUnit, by.n < 0n ? 'under' : 'over', ...(of === undefined ? [] : [of])].join(' ');
}
