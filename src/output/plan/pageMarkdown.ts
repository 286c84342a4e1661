import { type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import type { Page, Section } from './page.ts';

export const pageMarkdown = ({ title, about, answer, sections, cautions }: Page): readonly Markdown[] => [
  md`# ${title}`,
  ...about.map((each) => md`${each}`),
  ...listed(answer),
  ...sections.flatMap(sectionBlocks),
  ...listed(cautions),
];

const sectionBlocks = ({ title, table, lines = [], boxes = [] }: Section): readonly Markdown[] => [
  md`## ${title}`,
  ...(table === undefined ? [] : [markdownTable(table.heading, table.rows)]),
  ...listed(lines),
  ...listed(boxes, md`- [ ] `),
];

const listed = (texts: readonly string[], mark = md`- `): readonly Markdown[] =>
  texts.length === 0 ? [] : [markdownList(texts, mark)];
