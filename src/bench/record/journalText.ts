import type { Position } from '../../layout/position.ts';
import type { Plan, PlannedBlock } from '../plan.ts';
import type { PlannedPoint } from '../points.ts';
import type { GaugeZero, SessionHead } from '../sessionText.ts';
import type { RecordEvent } from './state.ts';

/** What an entry was about when it began: with its events all that is needed to take it up again. */
export interface RecordStart {
  readonly record: 1;
  readonly head: SessionHead;
  readonly plan: Plan;
  readonly points: readonly PlannedPoint[];
  readonly instruments: readonly (readonly [string, string])[];
  readonly zeros: readonly (readonly [string, GaugeZero])[];
}

/** Positions are kept by their keys, and found again in the layout. */
export function startLine({ plan, points, ...rest }: RecordStart): string {
  const blocks = plan.blocks.map(({ family, positions, ...block }) => ({
    ...block,
    family: family.name,
    positions: positions.map(({ key }) => key),
  }));
  const places = points.map((point) => ({ ...point, position: point.position.key }));
  return `${JSON.stringify({ ...rest, plan: { blocks }, points: places })}\n`;
}

export const eventLine = (event: RecordEvent): string => `${JSON.stringify(event)}\n`;

export interface ReadJournal {
  readonly start: RecordStart;
  readonly events: readonly RecordEvent[];
  /** Lines that power loss tore: they were never acknowledged. */
  readonly torn: number;
}

/** Undefined where not even the first line is whole: then nothing was ever taken. */
export function readJournal(text: string, positionOf: PositionOf): ReadJournal | undefined {
  const written = readLines(text);
  return written && { ...written, start: withPositions(written.start, positionOf) };
}

/** At how many places a reading was taken, whatever engine the entry is of. */
export const placesTaken = (text: string): number =>
  new Set(readLines(text)?.events.flatMap((each) => (each.do === 'take' ? [each.at] : []))).size;

function readLines(
  text: string,
): (Omit<ReadJournal, 'start'> & { readonly start: WrittenStart }) | undefined {
  const lines = text
    .split('\n')
    .filter((line) => line !== '')
    .map(parse);
  const first = lines.findIndex(isStart);
  const start = lines[first];
  if (!isStart(start)) return undefined;
  const rest = lines.slice(first + 1);
  const events = rest.filter(isEvent);
  return { start, events, torn: rest.length - events.length };
}

/** The position of a characteristic that has this key. */
export type PositionOf = (measure: string, key: string) => Position;

interface WrittenStart extends Omit<RecordStart, 'plan' | 'points'> {
  readonly plan: { readonly blocks: readonly WrittenPlan[] };
  readonly points: readonly (Omit<PlannedPoint, 'position'> & { readonly position: string })[];
}

type WrittenPlan = Omit<PlannedBlock, 'family' | 'positions'> & { readonly positions: readonly string[] };

const withPositions = (start: WrittenStart, positionOf: PositionOf): RecordStart => ({
  ...start,
  plan: {
    blocks: start.plan.blocks.flatMap((block) => {
      const positions = block.positions.map((key) => positionOf(block.measure, key));
      return positions[0] === undefined ? [] : [{ ...block, positions, family: positions[0].family }];
    }),
  },
  points: start.points.map((point) => ({ ...point, position: positionOf(point.measure, point.position) })),
});

function parse(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

const isStart = (found: unknown): found is WrittenStart =>
  typeof found === 'object' && found !== null && 'record' in found && found.record === 1 && 'points' in found;

const KINDS = new Set(['take', 'skip', 'leave', 'back', 'again', 'go', 'note', 'with', 'zero']);

const isEvent = (found: unknown): found is RecordEvent =>
  typeof found === 'object' && found !== null && 'do' in found && KINDS.has(String(found.do));
