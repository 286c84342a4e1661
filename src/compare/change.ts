import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Row } from '../checks/row.ts';
import type { Verdict } from '../checks/verdict.ts';
import { expandedFactor, welchSatterthwaite } from '../measurement/conformance.ts';
import { standardUncertainty, subtractValues, type Value } from '../measurement/value.ts';
import { compare, type Fraction, subtract, toNumber } from '../quantity/fraction.ts';
import type { EngineState, StateValue } from './state.ts';
import { unlikeness } from './unlike.ts';

export type ChangeState = 'same' | 'within' | 'real' | 'appeared' | 'disappeared';

/** What became of one characteristic at one position between two sides. */
export interface Change {
  readonly characteristic: Characteristic;
  readonly position: string;
  readonly state: ChangeState;
  /** Newly out, or newly in. */
  readonly crossed: 'out' | 'in' | null;
  readonly a: StateValue | undefined;
  readonly b: StateValue | undefined;
  /** b − a of the means, in the base unit; null where one side has no value. */
  readonly delta: Fraction | null;
  /** Expanded uncertainty of the difference: what both sides share has cancelled. */
  readonly expanded: number | null;
  /** Whether the value moved towards its deciding limits or away from them. */
  readonly moved: 'toward' | 'away' | null;
  /** Why the two are not like for like: another instrument, method, temperature or other conditions. */
  readonly unlike: readonly string[];
}

/** Every characteristic and position that either side has, matched by name and never by order. */
export function changesBetween(a: EngineState, b: EngineState): readonly Change[] {
  const keys = [...new Set([...a.values.keys(), ...b.values.keys()])];
  return keys.flatMap((key) => changeOf(a.values.get(key), b.values.get(key), a, b) ?? []);
}

function changeOf(
  before: StateValue | undefined,
  after: StateValue | undefined,
  a: EngineState,
  b: EngineState,
): Change | undefined {
  const row = (after ?? before)?.row;
  if (row === undefined) return undefined;
  const about = { characteristic: row.characteristic, position: row.position, a: before, b: after };
  const [from, to] = [meanOf(before), meanOf(after)];
  if (before === undefined || after === undefined || from === undefined || to === undefined) {
    const state = before === undefined ? 'appeared' : 'disappeared';
    return { ...about, state, crossed: null, delta: null, expanded: null, moved: null, unlike: [] };
  }
  const difference = subtractValues(to, recalibrated(from, before, after, a, b));
  const u = standardUncertainty(difference);
  const expanded = u * expandedFactor(welchSatterthwaite([...difference.terms.values()]));
  return {
    ...about,
    state: stateOfChange(difference.amount, expanded),
    crossed: crossing(before.row.judgement.verdict, after.row.judgement.verdict),
    delta: difference.amount,
    expanded,
    moved: movement(before.row, after.row),
    unlike: unlikeness(before, after),
  };
}

const meanOf = (of: StateValue | undefined): Value | undefined => of?.row.routes[0]?.route.measured.mean;

function stateOfChange(delta: Fraction, expanded: number): ChangeState {
  if (delta.n === 0n) return 'same';
  return Math.abs(toNumber(delta)) > expanded ? 'real' : 'within';
}

/** An instrument's own error is the same on both sides only within one calibration; after another it is a new one. */
function recalibrated(
  value: Value,
  before: StateValue,
  after: StateValue,
  a: EngineState,
  b: EngineState,
): Value {
  const between = (id: string): boolean =>
    [a, b].some((side) => {
      const calibrated = side.instruments.get(id)?.calibrated;
      const [first, last] = [before.session.date, after.session.date].sort();
      return (
        calibrated !== undefined &&
        first !== undefined &&
        last !== undefined &&
        first < calibrated &&
        calibrated <= last
      );
    });
  const terms = new Map(
    [...value.terms].map(([source, term]) => {
      const id = /^(?:largest error|calibration) of (.+)$/.exec(source)?.[1];
      return [
        id !== undefined && between(id) ? `${source} before it was calibrated again` : source,
        term,
      ] as const;
    }),
  );
  return { amount: value.amount, terms };
}

function crossing(before: Verdict | null, after: Verdict | null): 'out' | 'in' | null {
  const [was, is] = [isOut(before), isOut(after)];
  return was === is ? null : is ? 'out' : 'in';
}

/** An accepted deviation is out all the same. */
const isOut = (verdict: Verdict | null): boolean => verdict === 'out' || verdict === 'accepted';

/** By the distance to the nearest deciding limit; null where nothing limits it or nothing moved. */
function movement(before: Row, after: Row): 'toward' | 'away' | null {
  const [was, is] = [roomOf(before), roomOf(after)];
  if (was === undefined || is === undefined) return null;
  const order = compare(is, was);
  return order === 0 ? null : order < 0 ? 'toward' : 'away';
}

/** How far inside its nearest deciding limit a row lies; negative beyond it. */
function roomOf({ judgement, routes }: Row): Fraction | undefined {
  const [judged] = routes;
  const { min, max } = judgement.deciding;
  if (judged === undefined) return undefined;
  const rooms = [
    ...(max === undefined ? [] : [subtract(max.amount, judged.greatest)]),
    ...(min === undefined ? [] : [subtract(judged.least, min.amount)]),
  ];
  return rooms.length === 0 ? undefined : rooms.reduce((x, y) => (compare(y, x) < 0 ? y : x));
}
