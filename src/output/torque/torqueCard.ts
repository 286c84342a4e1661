import type { TighteningCard } from '../../torque/card.ts';
import type { Line } from '../escape/line.ts';
import { hanging } from '../terminal/hanging.ts';
import { PAGE } from '../terminal/onPage.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { type CardOrigin, type CardSection, cardView, type LoadSection, type PassView } from './cardView.ts';
import { drawingLines } from './cardWords.ts';

/** The tightening card for the bench, as text of at most 80 columns that fits a page. */
export function torqueCardLines(card: TighteningCard, origin: CardOrigin, style: TextStyle): readonly Line[] {
  const width = Math.min(style.width, PAGE);
  const { title, about, notes, joint, sections, source } = cardView(card, origin);
  return [
    ...wrap(title, width).map(style.paint.strong),
    ...wrap(about, width).map(style.paint.faint),
    ...notes.flatMap((text) => wrap(text, width)),
    '',
    ...drawingLines(joint, width),
    ...sections.flatMap((each) => ['', style.paint.strong(each.title), ...sectionLines(each, width, style)]),
    '',
    ...wrap(source, width),
  ];
}

function sectionLines(section: CardSection, width: number, style: TextStyle): readonly Line[] {
  switch (section.kind) {
    case 'boxes':
      return section.texts.flatMap((each) => hanging('[ ] ', each, width));
    case 'passes':
      return passTable(section.passes, width, style);
    case 'loads':
      return loadLines(section, width);
    case 'items':
      return items(section.texts, width);
    case 'doubts':
      return items(section.texts, width).map(style.paint.bad);
  }
}

const items = (texts: readonly string[], width: number): readonly string[] =>
  texts.flatMap((each) => hanging('- ', each, width));

const PASS_COLUMNS = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'right' },
  { align: 'right' },
] as const;

/** Both systems side by side where they fit, else one below the other. */
function passTable(passes: readonly PassView[], width: number, style: TextStyle): readonly Line[] {
  const beside = passRows(passes, style, true);
  const fits = laidOut(beside).every((line) => widthOf(line) <= width);
  const rows = fits ? beside : passRows(passes, style, false);
  const lines = laidOut(rows);
  let at = 0;
  return passes.flatMap(({ asides }, index) => {
    const count = rows[index]?.length ?? 0;
    at += count;
    return [...lines.slice(at - count, at), ...asides.flatMap((each) => asideLines(each, width))];
  });
}

type Rows = readonly (readonly (readonly Cell[])[])[];

const laidOut = (rows: Rows): readonly Line[] => layTable(rows.flat(), PASS_COLUMNS);

/** The rows of each pass. */
function passRows(passes: readonly PassView[], { paint }: TextStyle, beside: boolean): Rows {
  return passes.map(({ pass, lines }) =>
    lines.flatMap(({ does, amount, converted, isSetting }, index) => {
      const figure = (text: string): Cell => cell(isSetting ? paint.strong(text) : text);
      const mark = [index === 0 ? '[ ]' : '', index === 0 ? pass : '', does].map(cell);
      if (beside) return [[...mark, figure(amount), figure(converted)]];
      const below = [cell(''), cell(''), cell(''), figure(converted)];
      return converted === '' ? [[...mark, figure(amount)]] : [[...mark, figure(amount)], below];
    }),
  );
}

const asideLines = (text: string, width: number): readonly string[] =>
  wrap(text, width - ASIDE.length).map((line) => `${ASIDE}${line}`);

const ASIDE = ' '.repeat(10);

/** Columns that the table of loads takes with newtons and pounds beside each other. */
const BOTH_SYSTEMS = 72;

const LOAD_COLUMNS = [
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
] as const;

function loadLines({ rows, hasPercent, texts }: LoadSection, width: number): readonly Line[] {
  const heading = ['pass', 'load', 'between', ...(hasPercent ? ['of proof', 'at most'] : [])];
  const cells = rows.map(({ passes, load, oneSystem, between, ofProof, atMost }) => [
    passes,
    width < BOTH_SYSTEMS ? oneSystem : load,
    between,
    ofProof,
    atMost,
  ]);
  const table = layTable(
    [heading, ...cells].map((row) => row.map(cell)),
    LOAD_COLUMNS,
  );
  return [...(rows.length === 0 ? [] : table), ...items(texts, width)];
}
