import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { codeFrame } from '../terminal/codeFrame.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { visible } from '../terminal/visible.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { plural } from './checkText.ts';

/** Problems with documents: the place, what is wrong, the user's own line, what to do. */
export const diagnosticsText = (
  list: readonly Diagnostic[],
  texts: ReadonlyMap<string, string>,
  style: TextStyle,
): string => list.map((each) => diagnosticText(each, texts.get(each.place.path), style)).join('\n');

const FRAME_WIDTH = 100;

function diagnosticText(
  { code, message, help, place }: Diagnostic,
  text: string | undefined,
  style: TextStyle,
): string {
  const { paint } = style;
  const where = `${visible(place.path)}:${place.line}:${place.column}`;
  const frame =
    text === undefined ? '' : codeFrame(text, place, { width: Math.min(style.width, FRAME_WIDTH) });
  const head = `${paint.strong(where)}: ${paint.bad('error')} ${code}:`;
  return [
    ...behind(head, `${where}: error ${code}:`, visible(message), style.width),
    ...(frame === '' ? [] : [frame]),
    ...(help === undefined ? [] : indented(visible(help), style.width)),
    '',
  ].join('\n');
}

/** Words behind a head, or below it where the window is too narrow for both; a pipe has room for any line. */
const behind = (painted: string, head: string, words: string, width: number): readonly string[] =>
  widthOf(head) + 1 + widthOf(words) <= width
    ? [`${painted} ${words}`]
    : [painted, ...indented(words, width)];

const indented = (words: string, width: number): readonly string[] =>
  wrap(words, width - INDENT.length).map((line) => INDENT + line);

const INDENT = '   ';

export function notJudgedText(folder: string, { paint, width }: TextStyle): string {
  const name = folder === '.' ? 'the engine here' : visible(folder);
  const head = `${paint.strong(name)}: ${paint.bad('not judged')},`;
  const why = 'since a document that every verdict stands on has a problem';
  return `${behind(head, `${name}: not judged,`, why, width).join('\n')}\n`;
}

/** What a run came to. */
export interface RunCounts {
  readonly engines: number;
  readonly sessions: number;
  readonly diagnostics: number;
  readonly findings: { readonly error: number; readonly warning: number; readonly remark: number };
}

export function summaryText(
  { engines, sessions, diagnostics, findings }: RunCounts,
  { paint, width }: TextStyle,
): string {
  const told = [
    count(diagnostics, 'problem with a document', 'problems with documents'),
    count(findings.error, 'error'),
    count(findings.warning, 'warning'),
    count(findings.remark, 'remark'),
  ].filter(Boolean);
  const colour =
    diagnostics + findings.error > 0 ? paint.bad : findings.warning > 0 ? paint.notice : paint.good;
  const looked = `${plural(engines, 'engine')}, ${plural(sessions, 'session')}:`;
  const found = told.join(', ') || 'nothing to tell';
  return [
    `${looked}${looked.length + 1 + found.length > width ? '\n  ' : ' '}${colour(found)}`,
    ...wrap(CAUTION, width).map((line) => paint.faint(line)),
    '',
  ].join('\n');
}

const count = (n: number, one: string, many = `${one}s`): string =>
  n === 0 ? '' : `${n} ${n === 1 ? one : many}`;

/** The tool checks numbers against limits that its user supplied. */
const CAUTION =
  "The limits are the shop's own: the engine maker's manual and a qualified engineer come first.";
