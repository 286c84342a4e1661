import type { CardPass, TighteningCard } from '../../torque/card.ts';
import type { Line } from '../escape/line.ts';
import { hanging } from '../terminal/hanging.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import {
  assumptionWords,
  boltsLine,
  drawingLines,
  frictionWords,
  loadRows,
  placesText,
  toolsLine,
} from './cardWords.ts';
import { passLines } from './torqueWords.ts';

/** A page of a printer, and a terminal, have this many columns. */
const PAGE = 80;

/** Where a card comes from: said in its heading. */
export interface CardOrigin {
  readonly engine: string;
  readonly path: string;
}

/** The tightening card for the bench, as text of at most 80 columns that fits a page. */
export function torqueCardLines(card: TighteningCard, origin: CardOrigin, style: TextStyle): readonly Line[] {
  const width = Math.min(style.width, PAGE);
  const section = (title: string, lines: readonly Line[]): readonly Line[] =>
    lines.length === 0 ? [] : ['', style.paint.strong(title), ...lines];
  const { joint } = card;
  const { sequence } = joint;
  return [
    ...wrap(`${sequence.joint}: tightening card`, width).map(style.paint.strong),
    ...wrap(`${origin.engine}, ${origin.path}`, width).map(style.paint.faint),
    ...[boltsLine(joint), toolsLine(card), joint.note].flatMap((text) =>
      text === undefined ? [] : wrap(text, width),
    ),
    '',
    ...drawingLines(joint, width),
    ...section('confirm before', boxes(sequence.before, width)),
    ...section('passes', passTable(card, width, style)),
    ...section('confirm after', boxes(sequence.after, width)),
    ...section('expected clamp load of one fastener: an estimate', loadLines(card, width)),
    ...section('doubtful', card.doubts.flatMap((each) => item(each, width)).map(style.paint.bad)),
    ...section(
      'caution',
      card.cautions.flatMap(({ text }) => item(text, width)),
    ),
    '',
    ...wrap(`source: ${joint.source}`, width),
  ];
}

const boxes = (steps: readonly string[], width: number): readonly string[] =>
  steps.flatMap((step) => hanging('[ ] ', step, width));

const item = (text: string, width: number): readonly string[] => hanging('- ', text, width);

const PASS_COLUMNS = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'right' },
  { align: 'right' },
] as const;

/** Both systems side by side where they fit, else one below the other. */
function passTable(card: TighteningCard, width: number, style: TextStyle): readonly Line[] {
  const beside = passRows(card, style, true);
  const fits = laidOut(beside).every((line) => widthOf(line) <= width);
  const rows = fits ? beside : passRows(card, style, false);
  const lines = laidOut(rows);
  let at = 0;
  return card.passes.flatMap((pass, index) => {
    const count = rows[index]?.length ?? 0;
    at += count;
    return [...lines.slice(at - count, at), ...asideLines(pass, width)];
  });
}

type Rows = readonly (readonly (readonly Cell[])[])[];

const laidOut = (rows: Rows): readonly Line[] => layTable(rows.flat(), PASS_COLUMNS);

/** The rows of each pass. */
function passRows(card: TighteningCard, { paint }: TextStyle, beside: boolean): Rows {
  const units = { torque: card.joint.torqueUnit, length: card.joint.lengthUnit };
  return card.passes.map((pass) =>
    passLines(pass, units).flatMap(({ does, amount, converted, isSetting }, index) => {
      const figure = (text: string): Cell => cell(isSetting ? paint.strong(text) : text);
      const mark = [cell(index === 0 ? '[ ]' : ''), cell(index === 0 ? String(pass.pass) : ''), cell(does)];
      if (beside) return [[...mark, figure(amount), figure(converted)]];
      const below = [cell(''), cell(''), cell(''), figure(converted)];
      return converted === '' ? [[...mark, figure(amount)]] : [[...mark, figure(amount)], below];
    }),
  );
}

/** Which fasteners, where not all of them, and what is noted of the pass. */
const asideLines = (pass: CardPass, width: number): readonly string[] =>
  [placesText(pass), pass.note].flatMap((text) =>
    text === undefined ? [] : wrap(text, width - ASIDE.length).map((line) => `${ASIDE}${line}`),
  );

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

/** Each pass in kilonewtons and pounds, then what the figures take for granted. */
function loadLines(
  { passes, joint, assumptions, comparisons }: TighteningCard,
  width: number,
): readonly Line[] {
  const rows = loadRows(passes, joint.torqueUnit).map((row) =>
    [row.passes, width < BOTH_SYSTEMS ? row.oneSystem : row.load, row.between, row.ofProof, row.atMost].map(
      cell,
    ),
  );
  if (rows.length === 0) return joint.lacking.flatMap((each) => item(`none: ${each}`, width));
  const hasPercent = passes.some(({ load }) => load?.percent !== undefined);
  const heading = ['pass', 'load', 'between', ...(hasPercent ? ['of proof', 'at most'] : [])].map(cell);
  const reported = [...joint.lacking, ...assumptionWords(assumptions)].flatMap((each) => item(each, width));
  return [
    ...layTable([heading, ...rows], LOAD_COLUMNS),
    ...frictionWords(passes).flatMap((each) => item(each, width)),
    ...reported,
    ...comparisons.flatMap((each) => item(each, width)),
  ];
}
