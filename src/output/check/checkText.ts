import {
  type EngineReport,
  isState,
  type ReportedSession,
  type StateReport,
  unitsFor,
} from '../../checks/judge/report.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import { type FollowUpState, followUpText } from '../../checks/open/followUps.ts';
import { type Line, line } from '../escape/line.ts';
import { closedText } from '../state/closedText.ts';
import { briefStateLines, stateLines } from '../state/stateText.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { characteristicTables } from './checkTables.ts';
import { foldedRemarksLines, severitiesText, shownFindingLines } from './findingLines.ts';
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
  const lines: Line[] = [
    headingLine(report, style),
    ...wrap(RULES[rule], style.width).map(style.paint.faint),
  ];
  if (sessions.length === 0 && engine.notJudged.length === 0) lines.push('', 'no session yet');
  lines.push(...notJudgedLines(report, style));
  for (const session of chosen) {
    const shown = isState(session)
      ? [...stateLines(session, report, style), ...besideLines(session, style)]
      : sessionLines(session, report, style);
    lines.push('', ...shown);
  }
  return [...lines, ...closedLines(report, chosen, style), ...openLines(report.followUps, chosen)];
}

/** Of one engine among others what is wrong, and nothing else; none where nothing is. */
export function troubleLines(report: EngineReport, state: StateReport, style: TextStyle): readonly Line[] {
  const notJudged = notJudgedLines(report, style);
  const brief = briefStateLines(state, report, style);
  if (notJudged.length + brief.length === 0) return [];
  return [headingLine(report, style), ...notJudged, ...brief];
}

function headingLine({ engine }: EngineReport, { paint }: TextStyle): Line {
  const folder = engine.folder === '.' ? '' : line`  ${paint.faint(engine.folder)}`;
  return line`${paint.strong(engine.document.name)}${folder}`;
}

const notJudgedLines = ({ engine }: EngineReport, { paint }: TextStyle): readonly Line[] =>
  engine.notJudged.flatMap((path) => ['', line`${path}: ${paint.bad('not judged')}, since it has problems`]);

/** What the last session has met of what was promised: said once. */
function closedLines(
  { engine, followUps }: EngineReport,
  chosen: readonly ReportedSession[],
  { width }: TextStyle,
): readonly string[] {
  const last = chosen.at(-1)?.session;
  const closed = followUps.filter(({ closedBy }) => closedBy !== undefined && closedBy === last);
  const texts = closed.map((each) => closedText(each, unitsFor(engine)));
  return texts.length === 0 ? [] : ['', 'closed', ...texts.flatMap((text) => wrap(`  ${text}`, width))];
}

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

function sessionLines(session: ReportedSession, report: EngineReport, style: TextStyle): readonly Line[] {
  const { stage, date, name, by } = session.session;
  // A file that is named after its day and stage says nothing new.
  const file = name === `${date}-${stage}` ? '' : `  ${name}`;
  const title = line`${style.paint.strong(`${stage} ${date}`)}${file}${by === undefined ? '' : `, by ${by}`}`;
  const counts = wrap(`${stage} ${date}: ${countsText(session)}`, style.width);
  const tables = characteristicTables(session, unitsFor(report.engine), style);
  return [title, ...tables, ...besideLines(session, style, counts)];
}

/** What was tightened and found, and what that comes to. */
function besideLines(
  session: ReportedSession | StateReport,
  style: TextStyle,
  counts: readonly Line[] = [],
): readonly Line[] {
  const lines: Line[] = [];
  const logs = isState(session) ? session.tightened : session.session.tightened;
  const tightened = tighteningLines(logs, style.width);
  const found = shownFindingLines(session.findings, style);
  if (tightened.length > 0) lines.push('', ...tightened);
  if (found.length > 0) lines.push('', ...found);
  if (counts.length > 0) lines.push('', ...counts);
  lines.push(...foldedRemarksLines(session.findings, style), ...steppedBackLines(session.steppedBack, style));
  return lines;
}

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
