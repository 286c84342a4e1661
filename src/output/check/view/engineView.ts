import {
  type EngineReport,
  isState,
  type ReportedSession,
  type StateReport,
  unitsFor,
} from '../../../checks/judge/report.ts';
import { openFollowUpText } from '../../../checks/open/followUps.ts';
import { answerText, weightOf } from '../../state/answerText.ts';
import { closedText } from '../../state/closedText.ts';
import { type SessionView, sessionView, stateView, type TroubleView, troubleView } from './sessionView.ts';

/** What a run shows of an engine, in words: every format for a reader's eye is written from it. */
export interface EngineView {
  readonly name: string;
  readonly folder: string;
  /** Sessions whose documents have problems, by their paths. */
  readonly notJudged: readonly string[];
  /** Of one engine among others where it stands in a line, told before all else; undefined where there is none. */
  readonly answer: EngineAnswer | undefined;
  /** Undefined where nothing of it is shown: no session that was asked for is of this engine. */
  readonly whole: WholeView | undefined;
  /** Instead of the whole, of one engine among others: only what is wrong; undefined where nothing is. */
  readonly trouble: TroubleView | undefined;
}

export interface EngineAnswer {
  readonly text: string;
  /** The larger, the worse: the first figure that differs decides between two engines. */
  readonly weight: readonly number[];
}

export interface WholeView {
  readonly rule: string;
  readonly hasNoSession: boolean;
  readonly sessions: readonly SessionView[];
  /** What the last session has met of what was promised: said once. */
  readonly closed: readonly string[];
  /** What was promised with a concession and is still to be measured. */
  readonly open: readonly string[];
}

export interface Showing {
  readonly detail: boolean;
  /** Whether the run is about where several engines stand: then the answers come first, and what is well is not shown. */
  readonly isOneOfMany: boolean;
}

type Chosen = readonly (ReportedSession | StateReport)[];

export function engineView(
  report: EngineReport,
  chosen: Chosen,
  { detail, isOneOfMany }: Showing,
): EngineView {
  const { engine, sessions } = report;
  const [first] = chosen;
  const state = isOneOfMany && first !== undefined && isState(first) ? first : undefined;
  const isElsewhere = chosen.length === 0 && sessions.length > 0;
  const isBrief = state !== undefined && !detail;
  return {
    name: engine.document.name,
    folder: engine.folder,
    notJudged: engine.notJudged,
    answer: state && {
      text: answerText(state, report.followUps),
      weight: weightOf(state, report.followUps),
    },
    whole: isElsewhere || isBrief ? undefined : wholeView(report, chosen, detail),
    trouble: isBrief ? troubleView(state, report) : undefined,
  };
}

const RULES = {
  simple: 'rule simple: a value is compared with its limit as it stands',
  guarded: 'rule guarded (ISO 14253-1): inside or out only where 95 % sure, else undecided',
} as const;

function wholeView(report: EngineReport, chosen: Chosen, detail: boolean): WholeView {
  const { engine, rule, sessions } = report;
  return {
    rule: RULES[rule],
    hasNoSession: sessions.length === 0 && engine.notJudged.length === 0,
    sessions: chosen.map((each) =>
      isState(each) ? stateView(each, report, detail) : sessionView(each, report, detail),
    ),
    closed: closedTexts(report, chosen),
    open: openTexts(report, chosen),
  };
}

function closedTexts({ engine, followUps }: EngineReport, chosen: Chosen): readonly string[] {
  const last = chosen.at(-1)?.session;
  return followUps
    .filter(({ closedBy }) => closedBy !== undefined && closedBy === last)
    .map((each) => closedText(each, unitsFor(engine)));
}

function openTexts({ engine, followUps }: EngineReport, chosen: Chosen): readonly string[] {
  const last = chosen.at(-1)?.session.date ?? '';
  return followUps
    .filter(({ state, session }) => state === 'open' && session.date <= last)
    .map(
      (each) =>
        `${openFollowUpText(each, unitsFor(engine))}  (concession of ${each.session.stage} ${each.session.date})`,
    );
}
