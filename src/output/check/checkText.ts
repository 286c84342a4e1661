import type { Finding } from '../../checks/finding.ts';
import { type FollowUpState, followUpText } from '../../checks/findings/followUps.ts';
import {
  type EngineReport,
  isState,
  type ReportedSession,
  type StateReport,
  unitsFor,
} from '../../checks/judge/report.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import { type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { answerText } from './answerText.ts';
import { characteristicTables } from './checkTables.ts';
import { quietMeasures, quietText } from './quietRows.ts';
import { steppedBackLines } from './steppedBackText.ts';
import { tighteningLines } from './tighteningText.ts';

const RULES = {
  simple: 'rule simple: a value is compared with its limit as it stands',
  guarded: 'rule guarded (ISO 14253-1): inside or out only where 95 % sure, else undecided',
} as const;

/** Where an engine stands, or its sessions: tables, followed by the findings and what sums them up. */
export function engineLines(
  report: EngineReport,
  chosen: readonly (ReportedSession | StateReport)[],
  style: TextStyle,
): readonly Line[] {
  const { engine, rule, sessions } = report;
  const folder = engine.folder === '.' ? '' : line`  ${style.paint.faint(engine.folder)}`;
  const heading = line`${style.paint.strong(engine.document.name)}${folder}`;
  const lines: Line[] = [heading, ...wrap(RULES[rule], style.width).map(style.paint.faint)];
  if (sessions.length === 0 && engine.notJudged.length === 0) lines.push('', 'no session yet');
  for (const path of engine.notJudged) {
    lines.push('', line`${path}: ${style.paint.bad('not judged')}, since it has problems`);
  }
  for (const session of chosen) {
    const shown = isState(session)
      ? stateLines(session, report, style)
      : sessionLines(session, report, style);
    lines.push('', ...shown);
  }
  return [...lines, ...openLines(report.followUps, chosen)];
}

/** What a document holds and nothing is made of yet is not passed over in silence. */
const keptText = (kept: readonly string[]): readonly string[] =>
  kept.length === 0 ? [] : [`kept, not judged by this version: ${kept.join(', ')}`];

/** What was promised with a concession and is still to be measured. */
function openLines(
  followUps: readonly FollowUpState[],
  chosen: readonly ReportedSession[],
): readonly string[] {
  const last = chosen.at(-1)?.session.date ?? '';
  const open = followUps.filter((each) => each.state === 'open' && each.session.date <= last);
  if (open.length === 0) return [];
  const lineOf = ({ session, followUp }: FollowUpState): string =>
    `  ${followUpText(followUp)}  (concession of ${session.stage} ${session.date})`;
  return ['', 'still open', ...open.map(lineOf)];
}

/** The answer first, then what has something to say, then the rest, a line a characteristic. */
function stateLines(state: StateReport, report: EngineReport, style: TextStyle): readonly Line[] {
  const { rows, findings, run } = state;
  const unitFor = unitsFor(report.engine);
  const quiet = style.detail ? new Set<string>() : quietMeasures(rows, findings);
  const folded = [...quiet].map((id) =>
    quietText(
      rows.filter(({ characteristic }) => characteristic.id === id),
      unitFor,
    ),
  );
  const loud = rows.filter(({ characteristic }) => !quiet.has(characteristic.id));
  const answer = wrap(answerText(rows, report.followUps), style.width);
  const lines: Line[] = [
    ...answer.map(style.paint.strong),
    ...wrap(standingText(run), style.width).map(style.paint.faint),
    ...characteristicTables({ ...state, rows: loud }, unitFor, style),
  ];
  if (folded.length > 0) lines.push('', ...folded.flatMap((each) => wrap(each, style.width)));
  return [...lines, ...toldLines(state, style)];
}

/** `as rebuild 2026-03-14 leaves it, with what holds of trial 2026-03-07`. */
function standingText(run: StateReport['run']): string {
  const names = run.map(({ stage, date }) => `${stage} ${date}`);
  const earlier = names.slice(0, -1).reverse();
  const held = earlier.length === 0 ? '' : `, with what holds of ${earlier.join(' and ')}`;
  return `as ${names.at(-1)} leaves it${held}`;
}

function sessionLines(session: ReportedSession, report: EngineReport, style: TextStyle): readonly Line[] {
  const { stage, date, name, by } = session.session;
  // A file that is named after its day and stage says nothing new.
  const file = name === `${date}-${stage}` ? '' : `  ${name}`;
  const title = line`${style.paint.strong(`${stage} ${date}`)}${file}${by === undefined ? '' : `, by ${by}`}`;
  const counts = wrap(`${stage} ${date}: ${countsText(session)}`, style.width);
  const tables = characteristicTables(session, unitsFor(report.engine), style);
  return [title, ...tables, ...toldLines(session, style, counts)];
}

/** What was tightened and found, what that comes to, and what is kept and not judged. */
function toldLines(
  session: ReportedSession | StateReport,
  style: TextStyle,
  counts: readonly Line[] = [],
): readonly Line[] {
  const lines: Line[] = [];
  const told = session.findings.filter((each) => style.detail || each.severity !== 'remark');
  const logs = isState(session) ? session.tightened : session.session.tightened;
  const tightened = tighteningLines(logs, style.width);
  if (tightened.length > 0) lines.push('', ...tightened);
  if (told.length > 0) lines.push('', ...gathered(told).flatMap((each) => findingLines(each, style)));
  if (counts.length > 0) lines.push('', ...counts);
  const folded = session.findings.length - told.length;
  const faint = (text: string): readonly Line[] => wrap(text, style.width).map(style.paint.faint);
  if (folded > 0) lines.push(...faint(`${remarksText(session.findings)}: --detail lists them`));
  lines.push(
    ...steppedBackLines(session.steppedBack, style),
    ...keptText(session.session.kept).flatMap(faint),
  );
  return lines;
}

/** Positions of one characteristic that are missing are told together: a row of like lines is not read. */
function gathered(findings: readonly Finding[]): readonly Finding[] {
  const isMissing = ({ code, position }: Finding): boolean =>
    code === 'reading/missing' && position !== undefined;
  const others = (of: Finding): readonly Finding[] =>
    findings.filter((each) => isMissing(each) && each.measure === of.measure && each.place === of.place);
  return findings.flatMap((each) => {
    const [first, ...rest] = isMissing(each) ? others(each) : [each];
    if (first !== each) return [];
    const also = rest.length === 0 ? '' : `; likewise ${rest.map(({ position }) => position).join(', ')}`;
    return [{ ...each, message: `${each.message}${also}` }];
  });
}

/** Findings of no session. Remarks are counted alone, unless all is asked for. */
export function findingsLines(findings: readonly Finding[], style: TextStyle): readonly Line[] {
  const told = findings.filter((each) => style.detail || each.severity !== 'remark');
  const folded = told.length < findings.length ? [`${remarksText(findings)}: --detail lists them`] : [];
  const faint = folded.flatMap((text) => wrap(text, style.width)).map(style.paint.faint);
  return [...told.flatMap((each) => findingLines(each, style)), ...faint];
}

/** What it is and where it stands, with the place of the limit it speaks of. */
function findingLines(finding: Finding, { paint, width }: TextStyle): readonly Line[] {
  const colour = { error: paint.bad, warning: paint.notice, remark: paint.faint }[finding.severity];
  const [first = '', ...rest] = wrap(finding.message, width - INDENT);
  const { place, limitPlace } = finding;
  const limit =
    limitPlace === undefined ? '' : `  limit ${limitPlace.path}:${limitPlace.line}:${limitPlace.column}`;
  const where = `${place.path}:${place.line}:${place.column}  ${finding.code}${limit}`;
  return [
    line`  ${colour(finding.severity.padEnd(INDENT - 4))}  ${first}`,
    ...[...rest, ...wrap(where, width - INDENT).map(paint.faint)].map(
      (each) => line`${' '.repeat(INDENT)}${each}`,
    ),
  ];
}

/** Two spaces, the longest severity, two spaces. */
const INDENT = 11;

const ORDER: readonly Verdict[] = ['out', 'missing', 'undecided', 'accepted', 'worn', 'off target', 'ok'];

/** `1 out, 2 worn, 31 ok; 1 error, 3 warnings`. */
export function countsText({ rows, findings }: ReportedSession): string {
  const verdicts = ORDER.flatMap((verdict) => {
    const count = rows.filter((row) => row.judgement.verdict === verdict).length;
    return count === 0 ? [] : [`${count} ${verdict}`];
  });
  const unlimited = rows.filter((row) => row.judgement.verdict === null).length;
  if (unlimited > 0) verdicts.push(`${unlimited} without limits`);
  return [verdicts.join(', ') || 'nothing measured', severitiesText(findings)].filter(Boolean).join('; ');
}

export function severitiesText(findings: readonly Finding[]): string {
  const count = (severity: Finding['severity']): string => {
    const n = findings.filter((each) => each.severity === severity).length;
    return n === 0 ? '' : plural(n, severity);
  };
  return [count('error'), count('warning')].filter(Boolean).join(', ');
}

function remarksText(findings: readonly Finding[]): string {
  const remarks = findings.filter((each) => each.severity === 'remark');
  const codes = [...new Set(remarks.map((each) => each.code))];
  const counted = codes.map((code) => `${remarks.filter((each) => each.code === code).length} ${code}`);
  return `${plural(remarks.length, 'remark')} (${counted.join(', ')})`;
}

export const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
