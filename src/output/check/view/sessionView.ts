import type { Finding } from '../../../checks/finding.ts';
import {
  type EngineReport,
  type ReportedSession,
  type StateReport,
  unitsFor,
} from '../../../checks/judge/report.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Verdict } from '../../../checks/judge/verdict.ts';
import { shellWord } from '../../../diagnostic/shellWord.ts';
import type { Unit } from '../../../quantity/units.ts';
import { plural } from '../../../quantity/words.ts';
import { answerText } from '../../state/answerText.ts';
import { type FindingsView, findingsView, severitiesText } from './findingsView.ts';
import { leftOutText, withoutLeftOut } from './leftOutView.ts';
import { type QuietView, quietMeasures, quietViews, troubledMeasures } from './quietView.ts';
import { type SteppedBackView, steppedBackView } from './steppedBackView.ts';
import { type TableView, tableViews } from './tableView.ts';
import { tightenedText } from './tighteningText.ts';

/** Where an engine stands, or one of its sessions. */
export interface SessionView {
  /** Of a session `teardown 2026-02-03`, and what there is to know beside it. */
  readonly title: { readonly name: string; readonly beside: string } | undefined;
  /** Of where an engine stands: in one line, and which sessions that is from. */
  readonly answer: { readonly text: string; readonly standing: string } | undefined;
  readonly tables: readonly TableView[];
  /** What has nothing to say, a line a characteristic. */
  readonly quiet: readonly QuietView[];
  /** What was measured before and is to be measured anew. */
  readonly lastKnown: readonly QuietView[];
  /** What was left out on purpose, and why; empty where nothing was, or where its findings are listed. */
  readonly leftOut: string;
  readonly tightened: readonly string[];
  readonly findings: FindingsView;
  /** Of a session what its rows come to; else empty. */
  readonly counts: string;
  readonly steppedBack: SteppedBackView;
}

/** Only what is wrong where an engine stands. */
export interface TroubleView {
  readonly tables: readonly TableView[];
  readonly findings: FindingsView;
  /** What is left out, with the words that show it; empty where nothing is. */
  readonly more: string;
}

export function sessionView(session: ReportedSession, report: EngineReport, detail: boolean): SessionView {
  const { stage, date, name, by, tightened } = session.session;
  // A file that is named after its day and stage says nothing new.
  const file = name === `${date}-${stage}` ? '' : `  ${name}`;
  return {
    title: { name: `${stage} ${date}`, beside: `${file}${by === undefined ? '' : `, by ${by}`}` },
    answer: undefined,
    tables: tableViews(withoutLeftOut(session), unitsFor(report.engine), detail),
    quiet: [],
    lastKnown: [],
    leftOut: detail ? '' : leftOutText(session.rows, report.engine),
    tightened: tightened.map(tightenedText),
    findings: findingsView(session.findings, detail),
    counts: `${stage} ${date}: ${countsText(session)}`,
    steppedBack: steppedBackView(session.steppedBack, detail),
  };
}

/** The answer first, then what has something to say, then the rest, a line a characteristic. */
export function stateView(state: StateReport, report: EngineReport, detail: boolean): SessionView {
  const { findings, run } = state;
  const { rows } = withoutLeftOut(state);
  const unitFor = unitsFor(report.engine);
  const quiet = detail ? new Set<string>() : quietMeasures(rows, findings);
  const loud = rows.filter(({ characteristic }) => !quiet.has(characteristic.id));
  return {
    title: undefined,
    answer: { text: answerText(state, report.followUps), standing: standingText(run) },
    tables: tableViews({ ...state, rows: loud }, unitFor, detail),
    quiet: quietViews(measuredBy(rows, quiet), unitFor),
    lastKnown: lastKnownViews(state, unitFor),
    leftOut: detail ? '' : leftOutText(state.rows, report.engine),
    tightened: state.tightened.map(tightenedText),
    findings: findingsView(findings, detail),
    counts: '',
    steppedBack: steppedBackView(state.steppedBack, detail),
  };
}

/** Tables of what is wrong, and what is said of it; undefined where nothing is. */
export function troubleView(state: StateReport, { engine }: EngineReport): TroubleView | undefined {
  const findings = state.findings.filter(({ severity }: Finding) => severity !== 'remark');
  if (findings.length === 0) return undefined;
  const troubled = troubledMeasures(state.rows, findings);
  const rows = measuredBy(withoutLeftOut(state).rows, troubled);
  const others = new Set(state.rows.map(({ characteristic }) => characteristic.id)).size - troubled.size;
  const more = `${plural(others, 'characteristic')} more: tenths check ${shellWord(engine.folder)}`;
  return {
    tables: tableViews({ ...state, rows }, unitsFor(engine), false),
    findings: findingsView(findings, false),
    more: others > 0 ? more : '',
  };
}

/** A line for each characteristic that has no value now. */
function lastKnownViews({ rows, lastKnown }: StateReport, unitFor: (row: Row) => Unit): readonly QuietView[] {
  const shown = new Set(rows.map(({ characteristic }) => characteristic.id));
  const gone = lastKnown.filter(({ row }) => !shown.has(row.characteristic.id));
  const dateOf = new Map(gone.map(({ row, date }) => [row, date]));
  const when = (group: readonly Row[]): string =>
    `last known ${[...new Set(group.flatMap((row) => dateOf.get(row) ?? []))].sort().join(' and ')}`;
  return quietViews(
    gone.map(({ row }) => row),
    unitFor,
    when,
  );
}

const measuredBy = (rows: readonly Row[], ids: ReadonlySet<string>): readonly Row[] =>
  rows.filter(({ characteristic }) => ids.has(characteristic.id));

/** `as rebuild 2026-03-14 leaves it, with what holds of trial 2026-03-07`. */
function standingText(run: StateReport['run']): string {
  const names = run.map(({ stage, date }) => `${stage} ${date}`);
  const earlier = names.slice(0, -1).reverse();
  const held = earlier.length === 0 ? '' : `, with what holds of ${earlier.join(' and ')}`;
  return `as ${names.at(-1)} leaves it${held}`;
}

const ORDER: readonly Verdict[] = [
  'out',
  'missing',
  'undecided',
  'accepted',
  'worn',
  'off target',
  'left out',
  'ok',
];

/** `1 out, 2 worn, 31 ok; 1 error, 3 warnings`. */
function countsText({ rows, findings }: ReportedSession): string {
  const verdicts = ORDER.flatMap((verdict) => {
    const count = rows.filter((row) => row.judgement.verdict === verdict).length;
    return count === 0 ? [] : [`${count} ${verdict}`];
  });
  const unlimited = rows.filter((row) => row.judgement.verdict === null).length;
  if (unlimited > 0) verdicts.push(`${unlimited} without limits`);
  return [verdicts.join(', ') || 'nothing measured', severitiesText(findings)].filter(Boolean).join('; ');
}
