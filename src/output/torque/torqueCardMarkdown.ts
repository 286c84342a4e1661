import type { TighteningCard } from '../../torque/card.ts';
import { inMarkdown, markdownTable } from '../terminal/markdown.ts';
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
export function torqueCardMarkdown(card: TighteningCard, origin: CardOrigin): string {
  const { joint } = card;
  const { sequence } = joint;
  const drawing = drawingLines(joint, PAGE);
  const blocks = [
    `# ${inMarkdown(sequence.joint)}: tightening card`,
    `${inMarkdown(origin.engine)}, ${inMarkdown(origin.path)}`,
    ...[boltsLine(joint), toolsLine(card), joint.note].flatMap((text) =>
      text === undefined ? [] : inMarkdown(text),
    ),
    ...(drawing.length === 0 ? [] : [['```text', ...drawing, '```'].join('\n')]),
    ...section('Confirm before', boxes(sequence.before)),
    ...section('Passes', passTable(card)),
    ...section('Confirm after', boxes(sequence.after)),
    ...section('Expected clamp load of one fastener: an estimate', loads(card)),
    ...section('Doubtful', items(card.doubts)),
    ...section('Caution', items(card.cautions.map(({ text }) => text))),
    `Source: ${inMarkdown(joint.source)}`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

const section = (title: string, body: string): readonly string[] =>
  body === '' ? [] : [`## ${title}`, body];
const boxes = (steps: readonly string[]): string =>
  steps.map((each) => `- [ ] ${inMarkdown(each)}`).join('\n');
const items = (texts: readonly string[]): string => texts.map((each) => `- ${inMarkdown(each)}`).join('\n');

function passTable({ passes, joint }: TighteningCard): string {
  const units = { torque: joint.torqueUnit, length: joint.lengthUnit };
  const rows = passes.flatMap((pass) => {
    const lines = passLines(pass, units).map(({ does, amount, converted, isSetting }, index) => {
      const strong = (text: string): string => (isSetting && text !== '' ? `**${text}**` : text);
      return [
        index === 0 ? `${pass.pass}` : '',
        does,
        strong(amount),
        strong(converted),
        index === 0 ? '☐' : '',
      ];
    });
    const asides = [placesText(pass), pass.note];
    return [
      ...lines,
      ...asides.flatMap((text) => (text === undefined ? [] : [['', inMarkdown(text), '', '', '']])),
    ];
  });
  return markdownTable(['pass', 'do', 'amount', 'other units', 'done'], rows);
}

function loads({ passes, joint, assumptions, comparisons }: TighteningCard): string {
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
    items([...frictionWords(passes), ...joint.lacking, ...assumptionWords(assumptions), ...comparisons]),
  ].join('\n\n');
}
