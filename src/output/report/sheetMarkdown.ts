import { joined } from '../escape/language.ts';
import { type Markdown, markdownLink, markdownList, markdownTable, md } from '../escape/markdown.ts';
import type { Block, MeasureBlock, MeasureRow, Sheet, SheetCell, SheetSection } from './sheet.ts';

/** A sheet for a pull request or a wiki: everything that it says, without its pictures. */
export const sheetMarkdown = (sheet: Sheet): readonly Markdown[] => [
  md`<!-- tenths report -->`,
  md`# ${sheet.title}: ${sheet.about}`,
  ...(sheet.status === undefined ? [] : [md`**${sheet.status.text}**`]),
  ...(sheet.verdict === '' ? [] : [md`${sheet.verdict}`]),
  ...listed(sheet.reasons),
  ...listed(sheet.facts.map(({ name, value }) => md`${name}: ${cellMarkdown(value)}`)),
  ...sheet.sections.flatMap(sectionBlocks),
  ...listed(sheet.cautions),
];

const sectionBlocks = ({ title, blocks }: SheetSection): readonly Markdown[] => {
  const written = blocks.flatMap(blockMarkdown);
  // A section without any block says all in its title.
  return written.length === 0 && blocks.length > 0 ? [] : [md`## ${title}`, ...written];
};

function blockMarkdown(block: Block): readonly Markdown[] {
  switch (block.kind) {
    case 'measure':
      return measureMarkdown(block);
    case 'table':
      return [
        ...(block.title === '' ? [] : [md`**${block.title}**`]),
        ...(block.notes ?? []).map((each) => md`${each}`),
        markdownTable(
          block.columns.map(({ title }) => title),
          block.rows.map((row) => row.map(cellMarkdown)),
        ),
      ];
    case 'fields':
      return [
        md`**${block.title}**`,
        ...block.notes.map((each) => md`${each}`),
        ...listed(block.names.map((each) => blank(each))),
      ];
    case 'pictures':
      return listed(block.pictures.map(({ title, description }) => `${title}: ${description}`));
    case 'boxes':
      return listed(block.items, md`- [ ] `);
    case 'blanks':
      return listed(block.items.map((each) => blank(each)));
    case 'list':
      return listed(block.items);
    case 'text':
      return block.items.map((each) => md`${each}`);
  }
}

const measureMarkdown = ({ heading, limits, folded, rows }: MeasureBlock): readonly Markdown[] =>
  folded !== undefined
    ? [md`${folded}`]
    : [
        md`**${heading}** ${limits}`,
        markdownTable(['position', 'reading', 'verdict', 'before', 'notes'], rows.map(rowTexts)),
      ];

const rowTexts = ({ where, reading, verdict, before, notes, others }: MeasureRow): readonly string[] => [
  where,
  reading,
  verdict,
  before,
  [...others.map((each) => `also ${each}`), notes].filter(Boolean).join('; '),
];

const blank = (name: string): Markdown => (name === '' ? BLANK : md`${name}: ${BLANK}`);

const BLANK = md`\\_\\_\\_\\_\\_\\_\\_\\_`;

const cellMarkdown = (cell: SheetCell): Markdown =>
  typeof cell === 'string'
    ? md`${cell}`
    : joined(
        cell.map(({ text, to }) => (to === undefined ? md`${text}` : markdownLink(text, to))),
        md``,
      );

const listed = (texts: readonly (string | Markdown)[], mark = md`- `): readonly Markdown[] =>
  texts.length === 0 ? [] : [markdownList(texts, mark)];
