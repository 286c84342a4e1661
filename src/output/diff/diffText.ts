import type { EngineDiff } from '../../compare/diff.ts';
import { joined } from '../escape/language.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { type Cell, type Column, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import type { Sides } from './comparison.ts';
import {
  type ChangeView,
  type DiffView,
  diffView,
  type GroupView,
  NOTHING_MEASURED,
  type SectionView,
} from './diffView.ts';

/** What changed in one engine, the worst first; what is within its uncertainty or the same is counted. */
export function diffLines(
  engine: EngineDiff,
  sides: Sides,
  options: { readonly all: boolean },
  style: TextStyle,
): readonly Line[] {
  const view = diffView(engine, sides, options.all);
  const { paint } = style;
  const blocks: (readonly Line[])[] = [
    headLines(view, style),
    ...view.sections.map((each) => sectionLines(each, style)),
    [
      ...(view.counted === '' ? [] : [paint.faint(`${view.counted}: --all lists them`)]),
      ...(view.hasChanges ? [paint.faint(LEGEND)] : []),
    ],
  ].filter((lines) => lines.length > 0);
  if (blocks.length === 1) blocks.push([NOTHING_MEASURED]);
  return withGaps(blocks);
}

const LEGEND = 'before, after, change of the mean ± its uncertainty (95 %)';

function headLines({ name, sides, warmth }: DiffView, { paint, width }: TextStyle): readonly Line[] {
  const title = paint.strong(name);
  const fits = widthOf(title) + widthOf(sides) + 2 <= width;
  return [
    ...(fits ? [line`${title}  ${sides}`] : [title, sides]),
    ...(warmth === '' ? [] : [paint.notice(warmth)]),
  ];
}

const sectionLines = (section: SectionView, style: TextStyle): readonly Line[] => [
  style.paint.strong(section.title),
  ...('texts' in section
    ? section.texts.flatMap((text) =>
        wrap(text, style.width - 4).map((each, index) => `${index === 0 ? '  ' : '    '}${each}`),
      )
    : section.groups.flatMap((each) => groupLines(each, style))),
];

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

function groupLines(group: GroupView, style: TextStyle): readonly Line[] {
  const { heading, unlike } = group;
  const rows = (shape: Shape): readonly ChangeCells[] =>
    group.rows.map((row) => changeCells(row, unlike !== '', shape, style));
  const lines = fitting(style.width, SHAPES, (shape) =>
    shape.folded
      ? foldedRows(rows(shape))
      : layTable(
          rows(shape).map(({ numbers, words }) => [...numbers, ...words]),
          COLUMNS,
          4,
        ),
  );
  const shared = unlike === '' ? '' : line`  ${style.paint.notice(unlike)}`;
  return [line`  ${heading}${shared}`, ...lines];
}

interface ChangeCells {
  readonly numbers: readonly Cell[];
  readonly words: readonly Cell[];
}

/** The words below the numbers, where they do not fit beside them. */
const foldedRows = (rows: readonly ChangeCells[]): readonly Line[] =>
  layTable(
    rows.map(({ numbers }) => numbers),
    COLUMNS,
    4,
  ).flatMap((each, index) => {
    const reported =
      rows[index]?.words.filter(({ width }) => width > 0).map(({ text }) => line`${text}`) ?? [];
    return reported.length === 0 ? [each] : [each, line`        ${joined(reported, line`  `)}`];
  });

/** What is alike in all rows is said once, beside their name. */
const changeCells = (
  { where, shortWhere, before, after, change, changeAlone, verdicts, unlike, tone }: ChangeView,
  isShared: boolean,
  shape: Shape,
  { paint }: TextStyle,
): ChangeCells => ({
  numbers: [shape.labels ? where : shortWhere, before, after, shape.uncertainty ? change : changeAlone].map(
    cell,
  ),
  words: [
    cell(tone === 'plain' ? verdicts : paint[tone](verdicts)),
    cell(paint.notice(isShared ? '' : unlike)),
  ],
});
