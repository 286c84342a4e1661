import type { Row } from '../../checks/judge/row.ts';
import type { Standing, VerdictChange, VerdictChanges } from '../../compare/verdictChanges.ts';
import { shortName } from '../../layout/naming.ts';
import { plural } from '../../quantity/words.ts';
import type { Line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { byMeasure } from './byMeasure.ts';
import { shownFindingLines } from './findingLines.ts';
import { findingsView } from './view/findingsView.ts';

export const watchingLines = (folders: number, style: TextStyle): readonly Line[] =>
  faint(`watching ${plural(folders, 'folder')}; Ctrl-C ends it`, style);

/** Which documents were changed, in front of what follows from it. */
export const changedLines = (paths: readonly string[], hasNews: boolean, style: TextStyle): readonly Line[] =>
  faint(`changed: ${paths.join(', ')}${hasNews ? '' : '; the verdicts stay'}`, style);

/** What was said of documents and is said no more. */
export const settledLines = (messages: readonly string[], style: TextStyle): readonly Line[] =>
  messages.flatMap((each) => indented(`no more: ${each}`, style)).map(style.paint.faint);

/** `main bearing clearance 3 4: ok → out`, then what is said now and what is said no more. */
export const verdictChangeLines = (
  { verdicts, appeared, settled }: VerdictChanges,
  style: TextStyle,
): readonly Line[] => [
  ...movesOf(verdicts).flatMap(({ rows, move }) => indented(`${namesOf(rows)}: ${move}`, style)),
  // With its remarks: of one change there are few.
  ...shownFindingLines(findingsView(appeared, true), style),
  ...settledLines(
    settled.map(({ message }) => message),
    style,
  ),
];

interface Move {
  readonly move: string;
  readonly rows: readonly Row[];
}

/** Positions of one characteristic that went the same way stand together. */
function movesOf(changes: readonly VerdictChange[]): readonly Move[] {
  const moveOf = new Map(changes.map(({ row, from, to }) => [row, `${word(from)} → ${word(to)}`]));
  return byMeasure(changes.map(({ row }) => row)).flatMap((group) =>
    [...new Set(group.flatMap((row) => moveOf.get(row) ?? []))].map((move) => ({
      move,
      rows: group.filter((row) => moveOf.get(row) === move),
    })),
  );
}

const word = (standing: Standing): string =>
  standing === undefined ? 'not measured' : (standing ?? 'without limits');

const namesOf = (rows: readonly Row[]): string =>
  [rows[0]?.characteristic.label, ...new Set(rows.map(({ position }) => shortName(position)))]
    .filter(Boolean)
    .join(' ');

const faint = (text: string, { paint, width }: TextStyle): readonly Line[] =>
  wrap(text, width).map(paint.faint);

const indented = (text: string, { width }: TextStyle): readonly string[] =>
  wrap(text, width - 4).map((each, index) => `${index === 0 ? '  ' : '    '}${each}`);
