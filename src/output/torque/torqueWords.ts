import { compare, type Fraction, toDecimal, toNumber } from '../../quantity/fraction.ts';
import { fromBase, type Unit, unitNamed } from '../../quantity/units.ts';
import type { CardPass } from '../../torque/card.ts';
import type { ResolvedAction } from '../../torque/plan.ts';
import { type AmountRange, exactly } from '../../torque/sequence.ts';

/** Nobody writes a torque finer than this; a sum with run-on torque may come out finer. */
const TORQUE_DECIMALS = 2;
const OTHER_DECIMALS = 4;
const SHOWN_UNROUNDED = 3;

const trimmed = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/** As the document writes it: every digit that matters. */
const exact = (amount: Fraction, unit: Unit): string =>
  trimmed(toDecimal(fromBase(amount, unit), unit.quantity === 'torque' ? TORQUE_DECIMALS : OTHER_DECIMALS));

/** Three digits, as a scale is read: 407, 40.7, 4.07. */
function threeDigits(amount: Fraction, unit: Unit): string {
  const value = fromBase(amount, unit);
  const size = Math.abs(toNumber(value));
  return toDecimal(value, size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2);
}

/** The setting rounded as manuals print it, and the value before rounding where that differs. */
function rounded(amount: Fraction, unit: Unit): string {
  const [short, long] = [
    threeDigits(amount, unit),
    trimmed(toDecimal(fromBase(amount, unit), SHOWN_UNROUNDED)),
  ];
  return trimmed(short) === long ? long : `${short} (${long})`;
}

const spanWith =
  (write: (amount: Fraction, unit: Unit) => string) =>
  ({ least, greatest }: AmountRange, unit: Unit): string =>
    compare(least, greatest) === 0
      ? `${write(least, unit)} ${unit.name}`
      : `${write(least, unit)} to ${write(greatest, unit)} ${unit.name}`;

/** `58 to 69 lbf ft`. */
export const exactSpan = spanWith(exact);
/** In the other system of units: `78.6 to 93.6 N m`. */
export const convertedSpan = spanWith(threeDigits);
/** What a wrench is set to: `214 (214.286) lbf in`, or inside which ends it is to read. */
export const settingSpan = (span: AmountRange, unit: Unit): string =>
  compare(span.least, span.greatest) === 0 ? spanWith(rounded)(span, unit) : convertedSpan(span, unit);

const OTHER_UNIT: Readonly<Record<string, string>> = {
  'lbf ft': 'N m',
  'lbf in': 'N m',
  'ozf in': 'N m',
  'N m': 'lbf ft',
  'kgf m': 'lbf ft',
  in: 'mm',
  thou: 'mm',
  mm: 'in',
  um: 'in',
};

/** The unit of the other system in which a torque or a length is shown as well. */
export const otherUnit = (unit: Unit): Unit => unitNamed(OTHER_UNIT[unit.name] ?? unit.name);

const LENGTH_DECIMALS: Readonly<Record<string, number>> = { in: 4, thou: 1, mm: 3, um: 0 };

const lengthSpan = spanWith((amount, unit) =>
  toDecimal(fromBase(amount, unit), LENGTH_DECIMALS[unit.name] ?? OTHER_DECIMALS),
);

/** One line of a pass: what is done or read, in the document's unit, and in the other system. */
export interface PassLine {
  readonly does: string;
  readonly amount: string;
  readonly converted: string;
  /** What to set the wrench to: the figure that the hand needs. */
  readonly isSetting: boolean;
}

export interface CardUnits {
  readonly torque: Unit;
  readonly length: Unit;
}

/** The words and figures of one pass of a card: what it does first, then what goes with it. */
export function passLines(pass: CardPass, units: CardUnits): readonly PassLine[] {
  const { action, atFastener, setting } = pass;
  const torque = (does: string, span: AmountRange | undefined): readonly PassLine[] =>
    span === undefined ? [] : [line(does, span, units.torque, exactSpan)];
  const fully = action.kind === 'loosen' && action.angle === undefined ? ' fully' : '';
  const does = `${DOES[action.kind]}${fully}${percentOf(action)}`;
  const set: readonly PassLine[] =
    setting === undefined
      ? []
      : [{ ...line('set wrench to', setting, units.torque, settingSpan), isSetting: true }];
  switch (action.kind) {
    case 'turn':
      return [turning(does, action.angle)];
    case 'loosen':
      return [turning(does, action.angle)];
    case 'stretch':
      return [
        ...torque('until within', atFastener),
        ...set,
        stretching(action, atFastener === undefined ? does : 'and stretched', units),
      ];
    case 'check':
      return [
        ...torque(does, atFastener),
        ...set,
        ...torque('and at most', action.atMost && exactly(action.atMost)),
      ];
    case 'to':
      return [...torque(does, atFastener), ...set];
  }
}

const DOES: Readonly<Record<ResolvedAction['kind'], string>> = {
  to: 'tighten to',
  turn: 'turn further',
  loosen: 'loosen',
  stretch: 'until stretched',
  check: 'must hold',
};

const percentOf = (action: ResolvedAction): string =>
  (action.kind === 'to' || action.kind === 'check') && action.percent !== undefined
    ? ` (${trimmed(toDecimal(action.percent, 2))} %)`
    : '';

const line = (
  does: string,
  span: AmountRange,
  unit: Unit,
  write: (span: AmountRange, unit: Unit) => string,
): PassLine => ({
  does,
  amount: write(span, unit),
  converted: convertedSpan(span, otherUnit(unit)),
  isSetting: false,
});

const turning = (does: string, angle: AmountRange | undefined): PassLine => ({
  does,
  amount: angle === undefined ? '' : exactSpan(angle, unitNamed('deg')),
  converted: '',
  isSetting: false,
});

const stretching = (
  { stretch }: Extract<ResolvedAction, { kind: 'stretch' }>,
  does: string,
  { length }: CardUnits,
): PassLine => ({
  does,
  amount: lengthSpan(stretch, length),
  converted: lengthSpan(stretch, otherUnit(length)),
  isSetting: false,
});
