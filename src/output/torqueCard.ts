import type { CardPass, TighteningCard } from '../torque/card.ts';
import { boltsLine, drawingLines, forceTexts, frictionWords, onlyText, toolsLine } from './cardWords.ts';
import { cell, layTable, painted } from './table.ts';
import type { TextStyle } from './textStyle.ts';
import { passLines } from './torqueWords.ts';
import { visible } from './visible.ts';
import { wrap } from './wrap.ts';

/** A page of a printer, and a terminal, have this many columns. */
const PAGE = 80;
const INDENT = '  ';

/** Where a card comes from: said in its heading. */
export interface CardOrigin {
  readonly engine: string;
  readonly path: string;
}

/** The tightening card for the bench, as text of at most 80 columns that fits a page. */
export function torqueCardText(card: TighteningCard, origin: CardOrigin, style: TextStyle): string {
  const width = Math.min(style.width, PAGE);
  const section = (title: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : ['', style.paint.strong(title), ...lines];
  const { joint } = card;
  const { sequence } = joint;
  const lines = [
    ...wrap(visible(`${sequence.joint}: tightening card`), width).map(style.paint.strong),
    ...wrap(visible(`${origin.engine}, ${origin.path}`), width).map(style.paint.faint),
    ...[boltsLine(joint), toolsLine(card), joint.note].flatMap((text) =>
      text === undefined ? [] : wrap(visible(text), width),
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
    ...wrap(visible(`source: ${joint.source}`), width),
  ];
  return `${lines.join('\n')}\n`;
}

const boxes = (steps: readonly string[], width: number): readonly string[] =>
  steps.flatMap((step) => hanging('[ ] ', step, width));

const item = (text: string, width: number): readonly string[] => hanging('- ', text, width);

function hanging(mark: string, text: string, width: number): readonly string[] {
  const room = width - INDENT.length - mark.length;
  return wrap(visible(text), room).map(
    (line, index) => `${INDENT}${index === 0 ? mark : ' '.repeat(mark.length)}${line}`,
  );
}

const PASS_COLUMNS = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'right' },
  { align: 'right' },
] as const;

function passTable(card: TighteningCard, width: number, { paint }: TextStyle): readonly string[] {
  const units = { torque: card.joint.torqueUnit, length: card.joint.lengthUnit };
  const rows = card.passes.flatMap((pass) =>
    passLines(pass, units).map(({ does, amount, converted, isSetting }, index) => {
      const figure = (text: string) => (isSetting ? painted(text, paint.strong) : cell(text));
      return [
        cell(index === 0 ? '[ ]' : ''),
        cell(index === 0 ? String(pass.pass) : ''),
        cell(does),
        figure(amount),
        figure(converted),
      ];
    }),
  );
  const laid = layTable(rows, PASS_COLUMNS);
  let at = 0;
  return card.passes.flatMap((pass) => {
    const count = passLines(pass, units).length;
    at += count;
    return [...laid.slice(at - count, at), ...asideLines(pass, width)];
  });
}

/** Which fasteners, where not all of them, and what is noted of the pass. */
const asideLines = (pass: CardPass, width: number): readonly string[] =>
  [onlyText(pass), pass.note].flatMap((text) =>
    text === undefined ? [] : wrap(visible(text), width - ASIDE.length).map((line) => `${ASIDE}${line}`),
  );

const ASIDE = ' '.repeat(10);

const LOAD_COLUMNS = [
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
] as const;

/** Each pass in kilonewtons and pounds, then what the figures take for granted. */
function loadLines({ passes, joint, assumptions }: TighteningCard, width: number): readonly string[] {
  const rows = passes.flatMap(({ pass, load }) => {
    if (load === undefined) return [];
    const { load: both, between } = forceTexts(load, joint.torqueUnit);
    const percent = (value: number | undefined): string =>
      value === undefined ? '' : `${value.toFixed(0)} %`;
    return [[String(pass), both, between, percent(load.percent), percent(load.greatestPercent)].map(cell)];
  });
  if (rows.length === 0) return joint.lacking.flatMap((each) => item(`none: ${each}`, width));
  const hasPercent = passes.some(({ load }) => load?.percent !== undefined);
  const heading = ['pass', 'load', 'between', ...(hasPercent ? ['of proof', 'at most'] : [])].map(cell);
  const told = [...joint.lacking, ...assumptions].flatMap((each) => item(each, width));
  return [
    ...layTable([heading, ...rows], LOAD_COLUMNS),
    ...frictionWords(passes).flatMap((each) => item(each, width)),
    ...told,
  ];
}
