import { capital } from '../../quantity/words.ts';
import type { TighteningCard } from '../../torque/card.ts';
import { codeBlock, type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import { PAGE } from '../terminal/onPage.ts';
import {
  type CardOrigin,
  type CardSection,
  cardView,
  type LoadSection,
  loadTable,
  type PassView,
} from './cardView.ts';
import { drawingLines } from './cardWords.ts';

/** The tightening card as Markdown, for printing. */
export function torqueCardMarkdown(card: TighteningCard, origin: CardOrigin): readonly Markdown[] {
  const { title, about, notes, joint, sections, source } = cardView(card, origin);
  const drawing = drawingLines(joint, PAGE);
  return [
    md`# ${title}`,
    ...[about, ...notes].map((each) => md`${each}`),
    ...(drawing.length === 0 ? [] : [codeBlock(drawing)]),
    ...sections.flatMap((each) => [md`## ${capital(each.title)}`, ...sectionBlocks(each)]),
    md`${capital(source)}`,
  ];
}

function sectionBlocks(section: CardSection): readonly Markdown[] {
  switch (section.kind) {
    case 'boxes':
      return [markdownList(section.texts, md`- [ ] `)];
    case 'passes':
      return [passTable(section.passes)];
    case 'loads':
      return loads(section);
    default:
      return [markdownList(section.texts)];
  }
}

const passTable = (passes: readonly PassView[]): Markdown =>
  markdownTable(['pass', 'do', 'amount', 'other units', 'done'], passes.flatMap(passRows));

const passRows = ({ pass, lines, asides }: PassView) => [
  ...lines.map(({ does, amount, converted, isSetting }, index) => {
    const strong = (text: string) => (isSetting && text !== '' ? md`**${text}**` : text);
    return [index === 0 ? pass : '', does, strong(amount), strong(converted), index === 0 ? '☐' : ''];
  }),
  ...asides.map((text) => ['', text, '', '', '']),
];

function loads(section: LoadSection): readonly Markdown[] {
  const { heads, cells } = loadTable(section);
  return [
    ...(cells.length === 0 ? [] : [markdownTable(heads, cells)]),
    ...(section.texts.length === 0 ? [] : [markdownList(section.texts)]),
  ];
}
