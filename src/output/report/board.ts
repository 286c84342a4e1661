import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import type { RegisteredInstrument } from '../../documents/engine/instruments.ts';
import { closingOf } from '../../plan/closing/closing.ts';
import { answerText, weightOf } from '../state/answerText.ts';
import { statusOf } from './status.ts';
import { waitingTexts } from './waiting.ts';

/** Every engine of a shop, a line each, the most urgent first. */
export interface Board {
  readonly title: string;
  readonly about: string;
  readonly rows: readonly BoardRow[];
  readonly due: readonly DueInstrument[];
  readonly parts: readonly BoardPart[];
}

/** A part with a mark. */
export interface BoardPart {
  readonly name: string;
  readonly mark: string;
  readonly now: string;
  /** From the board to its page. */
  readonly page: string;
}

export interface BoardRow {
  readonly name: string;
  readonly folder: string;
  /** From the board to its sheet; undefined where it has none. */
  readonly page: string | undefined;
  readonly status: string;
  readonly isOpen: boolean;
  readonly answer: string;
  /** For whom or for what it waits. */
  readonly waiting: readonly string[];
  readonly since: string;
  readonly customer: string | undefined;
  /** The larger, the more urgent: the first figure that differs decides. */
  readonly weight: readonly number[];
}

export type DatedInstrument = Pick<RegisteredInstrument, 'id' | 'type' | 'due'>;

export interface DueInstrument {
  readonly id: string;
  readonly type: string;
  readonly due: string;
  readonly isOverdue: boolean;
}

export function boardRow(
  report: EngineReport,
  state: StateReport,
  page: string,
  withCustomers: boolean,
): BoardRow {
  const { document, folder } = report.engine;
  const closing = closingOf(report, state);
  const status = statusOf(report.engine, state, closing);
  return {
    name: document.name,
    folder,
    page,
    status: status.text,
    isOpen: status.isOpen,
    answer: answerText(state, report.followUps),
    waiting: waitingTexts(report, state, closing),
    since: state.session.date,
    customer: withCustomers ? document.job.customer : undefined,
    weight: [status.isOpen ? 1 : 0, ...weightOf(state, report.followUps)],
  };
}

/** One that has no session, or that no verdict can be given on: it is looked at first where its documents are broken. */
export const emptyRow = (name: string, folder: string, answer: string, isBroken: boolean): BoardRow => ({
  name,
  folder,
  page: undefined,
  status: isBroken ? 'not judged' : '',
  isOpen: isBroken,
  answer,
  waiting: [],
  since: '',
  customer: undefined,
  weight: [isBroken ? 2 : 0],
});

export const mostUrgentFirst = (rows: readonly BoardRow[]): readonly BoardRow[] =>
  rows.toSorted(
    (a, b) => compareWeights(b.weight, a.weight) || (a.since < b.since ? -1 : a.since > b.since ? 1 : 0),
  );

function compareWeights(a: readonly number[], b: readonly number[]): number {
  for (let index = 0; index < Math.max(a.length, b.length); index++) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

const DAYS_AHEAD = 60;
const MILLISECONDS_A_DAY = 86_400_000;

/** Those that are due on a day, or will be within two months. */
export function dueBy(instruments: Iterable<DatedInstrument>, day: string): readonly DueInstrument[] {
  const until = new Date(Date.parse(`${day}T00:00:00Z`) + DAYS_AHEAD * MILLISECONDS_A_DAY);
  const last = Number.isNaN(until.getTime()) ? day : until.toISOString().slice(0, 10);
  return [...instruments]
    .flatMap(({ id, type, due }) =>
      due === undefined || due > last ? [] : [{ id, type, due, isOverdue: due < day }],
    )
    .sort((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : 0));
}
