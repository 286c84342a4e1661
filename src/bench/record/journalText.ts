import type { Plan } from '../plan.ts';
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

export const startLine = (start: RecordStart): string => `${JSON.stringify(start)}\n`;
export const eventLine = (event: RecordEvent): string => `${JSON.stringify(event)}\n`;

export interface ReadJournal {
  readonly start: RecordStart;
  readonly events: readonly RecordEvent[];
  /** Lines that power loss tore: they were never acknowledged. */
  readonly torn: number;
}

/** Undefined where not even the first line is whole: then nothing was ever taken. */
export function readJournal(text: string): ReadJournal | undefined {
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

function parse(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

const isStart = (found: unknown): found is RecordStart =>
  typeof found === 'object' && found !== null && 'record' in found && found.record === 1 && 'points' in found;

const KINDS = new Set(['take', 'skip', 'back', 'again', 'go', 'note', 'with', 'zero']);

const isEvent = (found: unknown): found is RecordEvent =>
  typeof found === 'object' && found !== null && 'do' in found && KINDS.has(String(found.do));
