import { type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import { cellText, type Page, type Section, type Table } from './page.ts';

export const pageMarkdown = ({ title, about, answer, sections, cautions }: Page): readonly Markdown[] => [
  md`# ${title}`,
  ...about.map((each) => md`${each}`),
  ...listed(answer),
  ...sections.flatMap(sectionBlocks),
  ...listed(cautions),
];

const sectionBlocks = ({ title, table, lines = [], boxes = [] }: Section): readonly Markdown[] => [
  md`## ${title}`,
  ...(table === undefined ? [] : [tableMarkdown(table)]),
  ...listed(lines),
  ...listed(boxes, md`- [ ] `),
];

const tableMarkdown = ({ columns, rows }: Table): Markdown =>
  markdownTable(
    columns.map(({ heading }) => heading),
    rows.map((row) => row.map(cellText)),
  );

const listed = (texts: readonly string[], mark = md`- `): readonly Markdown[] =>
  texts.length === 0 ? [] : [markdownList(texts, mark)];
