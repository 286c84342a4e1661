import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { limitsOfFitted } from '../../checks/grades/madeSize.ts';
import type { Engine } from '../../documents/assemble.ts';
import { BAND_NAMES, type Band } from '../../documents/limits/bands.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import { decimalsFor } from '../../quantity/format.ts';
import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  parseDecimal,
  subtract,
} from '../../quantity/fraction.ts';
import { findUnit, fromBase, type Quantity, toBase, type Unit, unitsOf } from '../../quantity/units.ts';
import { nominalSize } from '../instruments.ts';
import type { PlannedPoint } from '../points.ts';
import type { RecordState, Taken } from './state.ts';
import type { Expectation } from './trailingDigits.ts';

export interface Expecting {
  readonly engine: Engine;
  readonly registry: Registry;
}

/** The unit in which plain numbers of a quantity are typed; undefined where nothing states one. */
export function typingUnit(quantity: Quantity, { units }: Engine): Unit | undefined {
  const all = unitsOf(quantity);
  return units.get(quantity) ?? (all.length === 1 ? all[0] : undefined);
}

/** What to compare a reading with before it is typed; undefined where nothing is known of its size. */
export function expectationAt(
  point: PlannedPoint,
  state: RecordState,
  { engine, registry }: Expecting,
): Expectation | undefined {
  const characteristic = registry.find(point.measure);
  const unit = characteristic && typingUnit(characteristic.quantity, engine);
  if (characteristic === undefined || unit === undefined) return undefined;
  const bands = bandsAt(point, { engine, registry });
  const [narrowest] = bands.map(({ min, max }) => subtract(max, min)).sort(compare);
  const [first] = statedBands(characteristic, point.position, engine);
  const reference =
    previousReading(point, state, unit) ??
    nominalSize(characteristic, point.position, engine)?.amount ??
    (first === undefined ? undefined : divide(add(first.min, first.max), fraction(2)));
  if (reference === undefined) return undefined;
  const instrument = engine.instruments.get(state.instruments.get(point.measure) ?? '');
  const finest = instrument?.resolution;
  return {
    reference: fromBase(reference, unit),
    decimals:
      finest === undefined ? writtenDecimals(point, state, { engine, registry }) : decimalsFor(finest, unit),
    bandWidth: narrowest === undefined ? undefined : fromBase(narrowest, unit),
  };
}

interface TwoSided {
  readonly min: Fraction;
  readonly max: Fraction;
}

/**
 * In the base unit. A part that has no band of its own is made to fit within those of what is worked out from it: a
 * journal within its clearance.
 */
function bandsAt(point: PlannedPoint, { engine, registry }: Expecting): readonly TwoSided[] {
  const characteristic = registry.find(point.measure);
  if (characteristic === undefined) return [];
  const own = statedBands(characteristic, point.position, engine);
  if (own.length > 0) return own;
  return registry.all
    .filter(
      ({ quantity, derivations }) =>
        quantity === characteristic.quantity &&
        derivations.some(({ inputs }) => inputs.includes(point.measure)),
    )
    .flatMap((each) =>
      (relate(engine.document.layout, point.position, each.family) ?? []).flatMap((position) =>
        statedBands(each, position, engine),
      ),
    );
}

function statedBands(of: Characteristic, position: Position, engine: Engine): readonly TwoSided[] {
  const { bands } = limitsOfFitted(engine, undefined, of, position);
  return BAND_NAMES.flatMap((name) => twoSided(bands[name]) ?? []);
}

const twoSided = (band: Band | undefined): TwoSided | undefined =>
  band?.min?.kind === 'amount' && band.max?.kind === 'amount'
    ? { min: band.min.amount, max: band.max.amount }
    : undefined;

const sameKind = (point: PlannedPoint, state: RecordState): readonly Taken[] =>
  [...state.taken.values()].filter((each) => each.point.measure === point.measure && each.zero === undefined);

function previousReading(point: PlannedPoint, state: RecordState, unit: Unit): Fraction | undefined {
  return sameKind(point, state)
    .map((each) => amountOf(each.texts.at(-1) ?? '', unit))
    .findLast((amount) => amount !== undefined);
}

/** In the base unit; undefined for a range. */
export function amountOf(text: string, unit: Unit): Fraction | undefined {
  const [, digits, name] = /^([-+]?(?:\d+(?:\.\d+)?|\.\d+))(?: (.+))?$/.exec(text) ?? [];
  const own = name === undefined ? unit : findUnit(name, unit.quantity);
  return digits === undefined || own === undefined ? undefined : toBase(parseDecimal(digits), own);
}

/** Without an instrument that says how fine it is: the digits of the reading before, or of the limits. */
function writtenDecimals(point: PlannedPoint, state: RecordState, around: Expecting): number {
  const before = sameKind(point, state).at(-1)?.texts.at(-1);
  if (before !== undefined) return decimalsIn(before);
  const characteristic = around.registry.find(point.measure);
  if (characteristic === undefined) return 0;
  const { engine } = around;
  const { bands } = limitsOfFitted(engine, undefined, characteristic, point.position);
  const sides = BAND_NAMES.flatMap((name) => [bands[name]?.min, bands[name]?.max]);
  return Math.max(0, ...sides.map((side) => (side?.kind === 'amount' ? decimalsIn(side.written) : 0)));
}

const decimalsIn = (text: string): number => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
