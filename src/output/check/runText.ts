import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { plural } from '../../quantity/words.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { codeFrame } from '../terminal/codeFrame.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import type { RunTotals } from './formats/format.ts';
import { knownText } from './knownFinding.ts';

/** Problems with documents: the place, what is wrong, the user's own line, what to do. */
export function diagnosticsLines(
  list: readonly Diagnostic[],
  texts: ReadonlyMap<string, string>,
  style: TextStyle,
): readonly Line[] {
  const alike = [...alikeIn(list).values()];
  const shown = new Set(alike.flatMap((each) => each.slice(0, MOST_ALIKE)));
  return withGaps([
    ...list
      .filter((each) => shown.has(each))
      .map((each) => diagnosticLines(each, texts.get(each.place.path), style)),
    ...alike.filter(({ length }) => length > MOST_ALIKE).map((each) => [moreLine(each, style)]),
  ]);
}

/** One cause makes them: nobody reads more of them to find it. */
const MOST_ALIKE = 100;

/** Of one kind in one document. */
function alikeIn(list: readonly Diagnostic[]): ReadonlyMap<string, readonly Diagnostic[]> {
  const found = new Map<string, Diagnostic[]>();
  for (const each of list) {
    const kind = `${each.code} ${each.place.path}`;
    const others = found.get(kind);
    if (others === undefined) found.set(kind, [each]);
    else others.push(each);
  }
  return found;
}

function moreLine(alike: readonly Diagnostic[], { paint }: TextStyle): Line {
  const [first] = alike;
  const left = alike.length - MOST_ALIKE;
  return line`${paint.strong(first?.place.path ?? '')}: ${left} more of ${first?.code ?? ''}`;
}

const FRAME_WIDTH = 100;

function diagnosticLines(
  { code, message, help, place }: Diagnostic,
  text: string | undefined,
  style: TextStyle,
): readonly Line[] {
  const { paint } = style;
  const where = `${place.path}:${place.line}:${place.column}`;
  const frame =
    text === undefined ? [] : codeFrame(text, place, { width: Math.min(style.width, FRAME_WIDTH) });
  const head = line`${paint.strong(where)}: ${paint.bad('error')} ${code}:`;
  return [
    ...behind(head, message, style.width),
    ...frame,
    ...(help === undefined ? [] : indented(help, style.width)),
  ];
}

/** Words behind a head, or below it where the window is too narrow for both; a pipe has room for any line. */
const behind = (head: Line, words: string, width: number): readonly Line[] =>
  widthOf(head) + 1 + widthOf(words) <= width ? [line`${head} ${words}`] : [head, ...indented(words, width)];

const indented = (words: string, width: number): readonly string[] =>
  wrap(words, width - INDENT.length).map((each) => INDENT + each);

const INDENT = '   ';

export function notJudgedLines(
  folder: string,
  faulty: readonly string[],
  { paint, width }: TextStyle,
): readonly Line[] {
  const name = folder === '.' ? 'the engine here' : folder;
  const head = line`${paint.strong(name)}: ${paint.bad('not judged')}:`;
  return behind(head, faultyText(faulty), width);
}

/** `limits.yaml has errors`, `engine.yaml and limits.yaml have errors`. */
export function faultyText(faulty: readonly string[]): string {
  const [last, ...others] = faulty.toReversed();
  return others.length === 0
    ? `${last} has errors`
    : `${others.toReversed().join(', ')} and ${last} have errors`;
}

export function summaryLines(totals: RunTotals, { paint, width }: TextStyle): readonly Line[] {
  const { diagnostics, findings } = totals;
  const colour =
    diagnostics + findings.error > 0 ? paint.bad : findings.warning > 0 ? paint.notice : paint.good;
  const { looked, found } = countsOf(totals);
  return [
    ...(looked.length + 1 + found.length > width
      ? [looked, line`  ${colour(found)}`]
      : [line`${looked} ${colour(found)}`]),
    ...wrap(CAUTION, width).map(paint.faint),
  ];
}

/** `4 engines, 9 sessions: 2 errors, 1 warning`. */
export function totalsText(totals: RunTotals): string {
  const { looked, found } = countsOf(totals);
  return `${looked} ${found}`;
}

function countsOf({ engines, sessions, diagnostics, findings, known }: RunTotals) {
  const reported = [
    count(diagnostics, 'problem with a document', 'problems with documents'),
    count(findings.error, 'error'),
    count(findings.warning, 'warning'),
    count(findings.remark, 'remark'),
  ].filter(Boolean);
  return {
    looked: `${plural(engines, 'engine')}, ${plural(sessions, 'session')}:`,
    found: `${reported.join(', ') || 'no findings'}${knownCount(known)}`,
  };
}

const knownCount = (known: RunTotals['known']): string =>
  known === undefined || known.findings === 0 ? '' : `; ${known.findings} of them known`;

/** What was known and is no longer found. */
export const goneTexts = ({ known }: RunTotals): readonly string[] => (known?.gone ?? []).map(knownText);

export const GONE = 'known, and no longer found';

const count = (n: number, one: string, many = `${one}s`): string =>
  n === 0 ? '' : `${n} ${n === 1 ? one : many}`;

/** The tool checks numbers against limits that its user supplied. */
export const CAUTION =
  "The limits are the shop's own: the engine maker's manual and a qualified engineer come first.";
