import { type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { tablesLines } from './checkTables.ts';
import { findingsLines, foldedLines, shownFindingLines } from './findingLines.ts';
import { quietLines } from './quietLines.ts';
import type { EngineView, WholeView } from './view/engineView.ts';
import type { SessionView, TroubleView } from './view/sessionView.ts';
import type { SteppedBackView } from './view/steppedBackView.ts';

/** Where an engine stands, its sessions, or what is wrong with it; none where nothing of it is shown. */
export function engineLines(view: EngineView, style: TextStyle): readonly Line[] {
  const { whole, trouble, notJudged } = view;
  const unjudged = notJudged.flatMap((path) => [
    '',
    line`${path}: ${style.paint.bad('not judged')}, since it has problems`,
  ]);
  if (whole !== undefined) return [headingLine(view, style), ...wholeLines(whole, unjudged, style)];
  if (trouble !== undefined) return [headingLine(view, style), ...unjudged, ...troubleLines(trouble, style)];
  return view.answer === undefined || unjudged.length === 0 ? [] : [headingLine(view, style), ...unjudged];
}

/** `Reservoir pump no. 2: 2 out: rod bearing clearance 2 3; 61 ok`: one engine among others. */
export function answerLines(name: string, answer: string, { paint, width }: TextStyle): readonly Line[] {
  const [first = '', ...more] = wrap(`${name}: ${answer}`, width - INDENT.length);
  const rest = more.map((each) => `${INDENT}${each}`);
  // The name stands out where it is not wrapped.
  return first.startsWith(name)
    ? [line`${paint.strong(name)}${first.slice(name.length)}`, ...rest]
    : [first, ...rest];
}

const INDENT = '  ';

function headingLine({ name, folder }: EngineView, { paint }: TextStyle): Line {
  return line`${paint.strong(name)}${folder === '.' ? '' : line`  ${paint.faint(folder)}`}`;
}

function wholeLines(view: WholeView, unjudged: readonly Line[], style: TextStyle): readonly Line[] {
  return [
    ...wrap(view.rule, style.width).map(style.paint.faint),
    ...(view.hasNoSession ? ['', 'no session yet'] : []),
    ...unjudged,
    ...view.sessions.flatMap((each) => ['', ...sessionLines(each, style)]),
    ...gap(
      'closed',
      view.closed.flatMap((text) => wrap(`  ${text}`, style.width)),
    ),
    ...gap(
      'still open',
      view.open.flatMap((text) => wrap(text, style.width - 2).map((each) => `  ${each}`)),
    ),
  ];
}

function troubleLines({ tables, findings, more }: TroubleView, style: TextStyle): readonly Line[] {
  return [
    ...tablesLines(tables, style),
    '',
    ...findingsLines(findings, style),
    ...(more === '' ? [] : wrap(more, style.width).map(style.paint.faint)),
  ];
}

function sessionLines(view: SessionView, style: TextStyle): readonly Line[] {
  const { paint, width } = style;
  return [
    ...headLines(view, style),
    ...tablesLines(view.tables, style),
    ...block(quietLines(view.quiet, style)),
    ...block(quietLines(view.lastKnown, style).map(paint.faint)),
    ...block(view.leftOut === '' ? [] : wrap(view.leftOut, width).map(paint.faint)),
    ...block(view.tightened.flatMap((text) => wrap(text, width - 2).map((each) => `  ${each}`))),
    ...block(shownFindingLines(view.findings, style)),
    ...block(view.counts === '' ? [] : wrap(view.counts, width)),
    ...foldedLines(view.findings, style),
    ...steppedBackLines(view.steppedBack, style),
  ];
}

function headLines({ title, answer }: SessionView, { paint, width }: TextStyle): readonly Line[] {
  return [
    ...(title === undefined ? [] : [line`${paint.strong(title.name)}${title.beside}`]),
    ...(answer === undefined ? [] : wrap(answer.text, width).map(paint.strong)),
    ...(answer === undefined ? [] : wrap(answer.standing, width).map(paint.faint)),
  ];
}

function steppedBackLines(
  { heading, readings }: SteppedBackView,
  { width, paint }: TextStyle,
): readonly Line[] {
  if (heading === '') return [];
  const each = readings.flatMap((text) =>
    wrap(text, width - 2).map((line, index) => `${index === 0 ? '  ' : '      '}${line}`),
  );
  return [...wrap(heading, width), ...each].map(paint.faint);
}

/** Lines behind an empty one, where there are any. */
const block = (lines: readonly Line[]): readonly Line[] => (lines.length === 0 ? [] : ['', ...lines]);

const gap = (title: string, lines: readonly Line[]): readonly Line[] =>
  lines.length === 0 ? [] : ['', title, ...lines];
