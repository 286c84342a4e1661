import type { TighteningCard } from '../../torque/card.ts';
import { codeBlock, type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import {
  assumptionWords,
  boltsLine,
  drawingLines,
  frictionWords,
  loadRows,
  placesText,
  toolsLine,
} from './cardWords.ts';
import type { CardOrigin } from './torqueCard.ts';
import { passLines } from './torqueWords.ts';

const PAGE = 80;

/** The tightening card as Markdown, for printing. */
export function torqueCardMarkdown(card: TighteningCard, origin: CardOrigin): readonly Markdown[] {
  const { joint } = card;
  const { sequence } = joint;
  const drawing = drawingLines(joint, PAGE);
  return [
    md`# ${sequence.joint}: tightening card`,
    md`${origin.engine}, ${origin.path}`,
    ...[boltsLine(joint), toolsLine(card), joint.note].flatMap((text) =>
      text === undefined ? [] : [md`${text}`],
    ),
    ...(drawing.length === 0 ? [] : [codeBlock(drawing)]),
    ...section('Confirm before', boxes(sequence.before)),
    ...section('Passes', [passTable(card)]),
    ...section('Confirm after', boxes(sequence.after)),
    ...section('Expected clamp load of one fastener: an estimate', loads(card)),
    ...section('Doubtful', items(card.doubts)),
    ...section('Caution', items(card.cautions.map(({ text }) => text))),
    md`Source: ${joint.source}`,
  ];
}

const section = (title: string, body: readonly Markdown[]): readonly Markdown[] =>
  body.length === 0 ? [] : [md`## ${title}`, ...body];

const boxes = (steps: readonly string[]): readonly Markdown[] => list(steps, md`- [ ] `);

const items = (texts: readonly string[]): readonly Markdown[] => list(texts, md`- `);

const list = (texts: readonly string[], mark: Markdown): readonly Markdown[] =>
  texts.length === 0 ? [] : [markdownList(texts, mark)];

function passTable({ passes, joint }: TighteningCard): Markdown {
  const units = { torque: joint.torqueUnit, length: joint.lengthUnit };
  const rows = passes.flatMap((pass) => {
    const lines = passLines(pass, units).map(({ does, amount, converted, isSetting }, index) => {
      const strong = (text: string) => (isSetting && text !== '' ? md`**${text}**` : text);
      return [
        index === 0 ? `${pass.pass}` : '',
        does,
        strong(amount),
        strong(converted),
        index === 0 ? '☐' : '',
      ];
    });
    const asides = [placesText(pass), pass.note];
    return [...lines, ...asides.flatMap((text) => (text === undefined ? [] : [['', text, '', '', '']]))];
  });
  return markdownTable(['pass', 'do', 'amount', 'other units', 'done'], rows);
}

function loads({ passes, joint, assumptions, comparisons }: TighteningCard): readonly Markdown[] {
  const rows = loadRows(passes, joint.torqueUnit).map((row) => [
    row.passes,
    row.load,
    row.between,
    row.ofProof,
    row.atMost,
  ]);
  if (rows.length === 0) return items(joint.lacking.map((each) => `none: ${each}`));
  const table = markdownTable(['pass', 'load', 'between', 'of proof', 'at most'], rows);
  return [
    table,
    ...items([...frictionWords(passes), ...joint.lacking, ...assumptionWords(assumptions), ...comparisons]),
  ];
}
