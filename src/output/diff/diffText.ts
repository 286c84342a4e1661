import type { Change } from '../../compare/change.ts';
import { type EngineDiff, newsOf } from '../../compare/diff.ts';
import type { EngineState } from '../../compare/state.ts';
import { shortName } from '../../layout/naming.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import { positionText } from '../check/view/rowView.ts';
import { joined } from '../escape/language.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { type Cell, type Column, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { type Sides, sidesText } from './comparison.ts';
import { type DiffSection, foldedText, groupsOf, sectionsOf } from './diffSections.ts';
import {
  concessionText,
  deltaText,
  limitChangeText,
  positionWord,
  printingOfChange,
  REWRITTEN,
  rewrittenTexts,
  sideText,
  unlikeText,
  verdictsText,
  warmthText,
} from './diffWords.ts';

/** What changed in one engine, the worst first; what is within its uncertainty or the same is counted. */
export function diffLines(
  { name, diff, unitFor }: EngineDiff,
  sides: Sides,
  options: { readonly all: boolean },
  style: TextStyle,
): readonly Line[] {
  const [title, about] = [style.paint.strong(name), sidesText(sides)];
  const fits = widthOf(title) + widthOf(about) + 2 <= style.width;
  const heading = fits ? [line`${title}  ${about}`] : [title, about];
  const warmth = warmthText(diff.changes);
  const sections = sectionsOf(diff);
  const shown = sections.filter(({ folded }) => options.all || !folded);
  const folded = options.all ? '' : foldedText(sections);
  const blocks: (readonly Line[])[] = [
    [...heading, ...(warmth === '' ? [] : [style.paint.notice(warmth)])],
    ...shown.map((each) => sectionLines(each, unitFor, options.all, style)),
    listLines(REWRITTEN, diff.rewritten.flatMap(rewrittenTexts), style),
    listLines(
      'limits changed',
      diff.limits.map((each) => limitChangeText(each, unitFor)),
      style,
    ),
    ...(['opened', 'closed'] as const).map((state) =>
      listLines(
        `concessions ${state}`,
        diff.concessions.filter((each) => each.state === state).map(concessionText),
        style,
      ),
    ),
    [
      ...(folded === '' ? [] : [style.paint.faint(`${folded}: --all lists them`)]),
      ...(diff.changes.some(({ delta }) => delta !== null) ? [style.paint.faint(LEGEND)] : []),
    ],
  ].filter((lines) => lines.length > 0);
  if (blocks.length === 1) blocks.push(['nothing measured on either side']);
  return withGaps(blocks);
}

const LEGEND = 'before, after, change of the mean ± its uncertainty (95 %)';

function listLines(title: string, texts: readonly string[], style: TextStyle): readonly Line[] {
  if (texts.length === 0) return [];
  const lines = texts.flatMap((text) =>
    wrap(text, style.width - 4).map((each, index) => `${index === 0 ? '  ' : '    '}${each}`),
  );
  return [style.paint.strong(title), ...lines];
}

function sectionLines(
  { title, listed, changes }: DiffSection,
  unitFor: EngineState['unitFor'],
  all: boolean,
  style: TextStyle,
): readonly Line[] {
  if (listed && !all) {
    const texts = groupsOf(changes).map(
      ([label, group]) => `${label}  ${group.map(positionWord).join(', ')}`,
    );
    return listLines(
      title,
      texts.map((text) => text.trimEnd()),
      style,
    );
  }
  const lines = groupsOf(changes).flatMap(([label, group]) => groupLines(label, group, unitFor, style));
  return [style.paint.strong(title), ...lines];
}

const COLUMNS: readonly Column[] = [
  { align: 'left' },
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
  { align: 'left' },
  { align: 'left' },
];

/** What gives way where the window is narrow. That rows are not like for like is said in any width. */
interface Shape {
  readonly labels: boolean;
  readonly uncertainty: boolean;
  /** The verdict and what is not like for like on a line of their own. */
  readonly folded: boolean;
}

const SHAPES: readonly Shape[] = [
  { labels: true, uncertainty: true, folded: false },
  { labels: false, uncertainty: true, folded: false },
  { labels: false, uncertainty: true, folded: true },
  { labels: false, uncertainty: false, folded: true },
];

function groupLines(
  label: string,
  group: readonly Change[],
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): readonly Line[] {
  const [first] = group;
  if (first === undefined) return [];
  const { unit } = printingOfChange(first, unitFor);
  const unlike = unlikeText(first.unlike);
  // What is alike in all of them is said once, beside the name.
  const isShared = unlike !== '' && group.every((each) => unlikeText(each.unlike) === unlike);
  const rows = (shape: Shape): readonly ChangeRow[] =>
    group.map((change) => changeRow(change, shape, isShared, unitFor, style));
  const lines = fitting(style.width, SHAPES, (shape) =>
    shape.folded
      ? foldedRows(rows(shape))
      : layTable(
          rows(shape).map(({ numbers, words }) => [...numbers, ...words]),
          COLUMNS,
          4,
        ),
  );
  const shared = isShared ? line`  ${style.paint.notice(unlike)}` : '';
  return [line`  ${headedWithUnit(label, unit)}${shared}`, ...lines];
}

interface ChangeRow {
  readonly numbers: readonly Cell[];
  readonly words: readonly Cell[];
}

/** The words below the numbers, where they do not fit beside them. */
const foldedRows = (rows: readonly ChangeRow[]): readonly Line[] =>
  layTable(
    rows.map(({ numbers }) => numbers),
    COLUMNS,
    4,
  ).flatMap((each, index) => {
    const reported =
      rows[index]?.words.filter(({ width }) => width > 0).map(({ text }) => line`${text}`) ?? [];
    return reported.length === 0 ? [each] : [each, line`        ${joined(reported, line`  `)}`];
  });

function changeRow(
  change: Change,
  shape: Shape,
  isShared: boolean,
  unitFor: EngineState['unitFor'],
  { paint }: TextStyle,
): ChangeRow {
  const row = (change.b ?? change.a)?.row;
  const printing = printingOfChange(change, unitFor);
  const where = row === undefined ? '' : shape.labels ? positionText(row) : shortName(row.position);
  return {
    numbers: [
      cell(where),
      cell(sideText(change.a, printing)),
      cell(sideText(change.b, printing)),
      cell(deltaText(change, printing, shape.uncertainty)),
    ],
    words: [
      cell(colourOf(change, paint)(verdictsText(change, printing))),
      cell(paint.notice(isShared ? '' : unlikeText(change.unlike))),
    ],
  };
}

function colourOf(change: Change, paint: TextStyle['paint']): (text: Line) => Line {
  const news = newsOf(change);
  if (news === null) return (text) => text;
  if (news === 'newly in') return paint.good;
  return news === 'newly out' && change.b?.row.judgement.verdict === 'out' ? paint.bad : paint.notice;
}
