import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Row } from '../checks/judge/row.ts';
import type { Verdict } from '../checks/judge/verdict.ts';
import type { Position } from '../layout/position.ts';
import { expandedFactor, welchSatterthwaite } from '../measurement/conformance.ts';
import { addValues, exactly, standardUncertainty, subtractValues, type Value } from '../measurement/value.ts';
import { equals, type Fraction, subtract, toNumber, ZERO } from '../quantity/fraction.ts';
import { nearestTurn } from '../quantity/turn.ts';
import { levelWith } from './level.ts';
import { type Movement, movement } from './movement.ts';
import { bySheet } from './sheetOrder.ts';
import type { EngineState, StateValue } from './state.ts';
import { type Unlikeness, unlikeness } from './unlike.ts';

export type ChangeState = 'same' | 'within' | 'real' | 'appeared' | 'disappeared';

/** What became of one characteristic at one position between two sides. */
export interface Change {
  readonly characteristic: Characteristic;
  readonly position: Position;
  readonly state: ChangeState;
  /** From a verdict inside (ok, off target, worn) to out or accepted, or back; what is undecided is neither. */
  readonly crossed: 'out' | 'in' | null;
  readonly a: StateValue | undefined;
  readonly b: StateValue | undefined;
  /** b − a of the means, in the base unit; null where one side has no value. */
  readonly delta: Fraction | null;
  /** Expanded uncertainty of the difference: what both sides share has cancelled. */
  readonly expanded: number | null;
  /** Null where the change is not real, no limit decides on both sides alike, or another limit is the nearest now. */
  readonly moved: Movement | null;
  /** Why the two are not like for like. */
  readonly unlike: readonly Unlikeness[];
}

/** Every characteristic and position that either side has, matched by name, in the order of the sheet. */
export function changesBetween(a: EngineState, b: EngineState): readonly Change[] {
  const keys = [...new Set([...a.values.keys(), ...b.values.keys()])];
  return keys
    .flatMap((key) => changeOf(a.values.get(key), b.values.get(key), a, b) ?? [])
    .sort(bySheet(b.layout ?? a.layout, ({ characteristic }) => characteristic));
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
  const [from, to] = [levelMean(before, after?.row), meanOf(after)];
  if (before === undefined || after === undefined || from === undefined || to === undefined) {
    const state = before === undefined ? 'appeared' : 'disappeared';
    return { ...about, state, crossed: null, delta: null, expanded: null, moved: null, unlike: [] };
  }
  const difference = subtractValues(to, ownErrors(from, before, after, a, b));
  const delta = nearestTurn(difference.amount, ZERO, row.characteristic.cycle);
  const u = standardUncertainty(difference);
  const expanded = u * expandedFactor(welchSatterthwaite([...difference.terms.values()]));
  const state = stateOfChange(before.row, after.row, delta, expanded);
  return {
    ...about,
    state,
    crossed: crossing(before.row.judgement.verdict, after.row.judgement.verdict),
    delta,
    expanded,
    moved: state === 'real' ? movement(before.row, after.row) : null,
    unlike: unlikeness(before, after),
  };
}

const meanOf = (of: StateValue | undefined): Value | undefined => of?.row.routes[0]?.route.measured.mean;

/** The earlier mean, as warm as the later one. */
function levelMean(of: StateValue | undefined, later: Row | undefined): Value | undefined {
  const [mean, judged] = [meanOf(of), of?.row.routes[0]];
  if (of === undefined || mean === undefined || judged === undefined || later === undefined) return mean;
  const level = levelWith(of.row, later) ?? judged;
  return level === judged ? mean : addValues(mean, exactly(subtract(level.mean, judged.mean)));
}

function stateOfChange(before: Row, after: Row, delta: Fraction, expanded: number): ChangeState {
  if (isSameReading(before, after)) return 'same';
  return Math.abs(toNumber(delta)) > expanded ? 'real' : 'within';
}

/** At 20 °C. A mean may stay while the ends moved apart: only what agrees in all three is the same. */
function isSameReading(before: Row, after: Row): boolean {
  const [a, b] = [before, after].map(({ routes }) => routes[0]?.standard);
  if (a === undefined || b === undefined) return a === b;
  return equals(a.least, b.least) && equals(a.mean, b.mean) && equals(a.greatest, b.greatest);
}

/**
 * The earlier value with the errors that it does not share with the later under names of their own. An instrument's own
 * error is the same on both sides only within one calibration; a reading's own error is its own, even where the later
 * one was written over it in the same place of the same file.
 */
function ownErrors(
  value: Value,
  before: StateValue,
  after: StateValue,
  a: EngineState,
  b: EngineState,
): Value {
  const isSame = isSameReading(before.row, after.row);
  const terms = new Map(
    [...value.terms].map(([source, term]) => {
      const { instrument } = term;
      const isShared =
        instrument === undefined ? isSame : !calibratedBetween(instrument, before, after, [a, b]);
      return [isShared ? source : `${source}, before`, term] as const;
    }),
  );
  return { amount: value.amount, terms };
}

function calibratedBetween(
  id: string,
  before: StateValue,
  after: StateValue,
  sides: readonly EngineState[],
): boolean {
  const [first = '', last = ''] = [before.session.date, after.session.date].sort();
  return sides.some(({ instruments }) => {
    const calibrated = instruments.get(id)?.calibrated;
    return calibrated !== undefined && first < calibrated && calibrated <= last;
  });
}

function crossing(before: Verdict | null, after: Verdict | null): 'out' | 'in' | null {
  if (isInside(before) && isOut(after)) return 'out';
  return isOut(before) && isInside(after) ? 'in' : null;
}

/** An accepted deviation is out all the same. */
export const isOut = (verdict: Verdict | null | undefined): boolean =>
  verdict === 'out' || verdict === 'accepted';

export const isInside = (verdict: Verdict | null | undefined): boolean =>
  verdict === 'ok' || verdict === 'off target' || verdict === 'worn';
