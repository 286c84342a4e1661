import { type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import type { FindingsView, FindingView } from './view/findingsView.ts';

/** Findings with their places. */
export const findingsLines = (view: FindingsView, style: TextStyle): readonly Line[] => [
  ...shownFindingLines(view, style),
  ...foldedLines(view, style),
];

export const shownFindingLines = ({ shown }: FindingsView, style: TextStyle): readonly Line[] =>
  shown.flatMap((each) => findingLines(each, style));

export const foldedLines = ({ folded }: FindingsView, { width, paint }: TextStyle): readonly Line[] =>
  folded === '' ? [] : wrap(folded, width).map(paint.faint);

/** What it is and where it stands, with the place of the limit it speaks of. */
function findingLines(finding: FindingView, { paint, width }: TextStyle): readonly Line[] {
  const colour = { error: paint.bad, warning: paint.notice, remark: paint.faint }[finding.severity];
  const [first = '', ...rest] = wrap(finding.message, width - INDENT);
  const { place, limitPlace } = finding;
  const limit =
    limitPlace === undefined ? '' : `  limit ${limitPlace.path}:${limitPlace.line}:${limitPlace.column}`;
  const known = finding.known === true ? '  known' : '';
  const where = `${place.path}:${place.line}:${place.column}  ${finding.code}${limit}${known}`;
  return [
    line`  ${colour(finding.severity.padEnd(INDENT - 4))}  ${first}`,
    ...[...rest, ...wrap(where, width - INDENT).map(paint.faint)].map(
      (each) => line`${' '.repeat(INDENT)}${each}`,
    ),
  ];
}

/** Two spaces, the longest severity, two spaces. */
const INDENT = 11;
