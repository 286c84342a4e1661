import type { Measure } from '../documents/measure.ts';
import { type Point, pointsOf } from '../documents/session/reading.ts';
import { compareSessions, type SessionDocument } from '../documents/session/session.ts';
import type { Position } from '../layout/position.ts';
import { compare } from '../quantity/fraction.ts';
import { bySheet } from './sheetOrder.ts';
import { type EngineState, keyOfPosition } from './state.ts';

/** What stands in a session's file at one position, on both sides as typed; empty where nothing does. */
export interface RewrittenReading {
  readonly measure: Measure;
  readonly position: Position;
  readonly a: readonly string[];
  readonly b: readonly string[];
}

/**
 * A session whose readings are not the same on both sides, of which later sessions measured anew what is not the same:
 * among the latest values it would pass unseen that the record itself was changed.
 */
export interface RewrittenSession {
  readonly session: SessionDocument;
  /** On one side there is no such session. */
  readonly state: 'edited' | 'new' | 'gone';
  readonly readings: readonly RewrittenReading[];
}

/** By their dates, and in each by the sheet. Of an engine that one side does not have there are none. */
export function rewrittenSessions(a: EngineState, b: EngineState): readonly RewrittenSession[] {
  if (a.layout === undefined || b.layout === undefined) return [];
  return [...new Set([...a.sessions.keys(), ...b.sessions.keys()])]
    .flatMap((key) => rewrittenSession(a, b, key) ?? [])
    .sort((x, y) => compareSessions(x.session, y.session));
}

function rewrittenSession(a: EngineState, b: EngineState, key: string): RewrittenSession | undefined {
  const [before, after] = [a.sessions.get(key), b.sessions.get(key)];
  const session = after ?? before;
  if (session === undefined) return undefined;
  const [was, is] = [readingsOf(before), readingsOf(after)];
  const readings = [...new Set([...was.keys(), ...is.keys()])]
    .filter((each) => !isLatest(a, before, each) || !isLatest(b, after, each))
    .flatMap((each) => readingOf(was.get(each), is.get(each)) ?? [])
    .sort(bySheet(b.layout, ({ measure }) => measure));
  const state = before === undefined ? 'new' : after === undefined ? 'gone' : 'edited';
  return readings.length === 0 ? undefined : { session, state, readings };
}

/** Whether the latest value on that side is this session's, so that it is compared with the others; so is what is not there. */
const isLatest = (side: EngineState, session: SessionDocument | undefined, key: string): boolean =>
  session === undefined || side.values.get(key)?.session === session;

interface Placed {
  readonly measure: Measure;
  readonly position: Position;
  /** A list for each block that holds the position. */
  readonly blocks: readonly (readonly Point[])[];
}

/** Everything that a session read at each position. */
function readingsOf(session: SessionDocument | undefined): ReadonlyMap<string, Placed> {
  const placed = new Map<string, Placed>();
  for (const { measure, positions } of session?.blocks ?? []) {
    for (const reading of positions) {
      const key = keyOfPosition(measure, reading.position);
      const blocks = [...(placed.get(key)?.blocks ?? []), pointsOf(reading)];
      placed.set(key, { measure, position: reading.position, blocks });
    }
  }
  return placed;
}

/** What is not the same at one position. Of readings that are as many on both sides only those that differ are reported. */
function readingOf(before: Placed | undefined, after: Placed | undefined): RewrittenReading | undefined {
  const placed = after ?? before;
  const [was, is] = [pointsIn(before), pointsIn(after)];
  const differs = (_: Point, index: number): boolean =>
    was.length !== is.length || compareAmounts(was.slice(index, index + 1), is.slice(index, index + 1)) !== 0;
  const [a, b] = [was.filter(differs), is.filter(differs)];
  if (placed === undefined || (a.length === 0 && b.length === 0)) return undefined;
  const { measure, position } = placed;
  return { measure, position, a: a.map(({ written }) => written), b: b.map(({ written }) => written) };
}

/** Blocks in an order that is not that of the file, which means nothing. */
const pointsIn = (placed: Placed | undefined): readonly Point[] =>
  [...(placed?.blocks ?? [])].sort(compareAmounts).flat();

/** By what they come to, in whatever unit it is written. */
function compareAmounts(a: readonly Point[], b: readonly Point[]): number {
  for (const [index, { amount }] of a.entries()) {
    const other = b[index];
    const order = other === undefined ? 1 : compare(amount, other.amount);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}
