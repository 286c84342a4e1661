import { capital } from '../../quantity/words.ts';
import { type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import {
  cellText,
  comesTo,
  labelled,
  type Page,
  type Section,
  type Table,
  withoutEmptyColumns,
} from './page.ts';

export const pageMarkdown = ({ title, about, answer, sections, cautions }: Page): readonly Markdown[] => [
  md`# ${title}`,
  ...about.map((each) => md`${each}`),
  ...listed(answer),
  ...sections.flatMap(sectionBlocks),
  ...listed(cautions),
];

const sectionBlocks = (section: Section): readonly Markdown[] => {
  const { table, lines = [], remarks = [], boxes = [] } = section;
  return [
    heading(section),
    ...(table === undefined ? [] : [tableMarkdown(table)]),
    ...listed(comesTo(remarks)),
    ...labelled(remarks).flatMap(({ label, texts }) => [md`${capital(label)}:`, ...listed(texts)]),
    ...listed(lines),
    ...listed(boxes, md`- [ ] `),
  ];
};

const heading = ({ title, job }: Section): Markdown =>
  job === undefined ? md`## ${title}` : md`## ${job.number}. ${title} (${job.urgency})`;

function tableMarkdown(table: Table): Markdown {
  const { columns, rows } = withoutEmptyColumns(table);
  return markdownTable(
    columns.map(({ heading }) => heading),
    rows.map((row) => row.map(cellText)),
  );
}

const listed = (texts: readonly string[], mark = md`- `): readonly Markdown[] =>
  texts.length === 0 ? [] : [markdownList(texts, mark)];
