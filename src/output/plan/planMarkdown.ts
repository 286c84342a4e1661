import { type Markdown, markdownList, md } from '../escape/markdown.ts';
import type { JobWords } from './jobWords.ts';
import type { PlanPage } from './planPage.ts';

/** The plan as Markdown, for printing or for a pull request. */
export const planMarkdown = (page: PlanPage): readonly Markdown[] => [
  md`# ${page.title}`,
  md`${page.standing}`,
  markdownList(page.answer),
  ...page.jobs.flatMap(jobBlocks),
  ...listed(page.cautions),
];

function jobBlocks({ title, urgency, cuts, why, follows }: JobWords, index: number): readonly Markdown[] {
  const comesTo = cuts.flatMap(({ answer, workings }) => [...answer, ...workings]);
  return [
    md`## ${index + 1}. ${title} (${urgency})`,
    ...listed(comesTo),
    ...titled('Why', why),
    ...titled('Then', follows),
  ];
}

const titled = (title: string, texts: readonly string[]): readonly Markdown[] =>
  texts.length === 0 ? [] : [md`${title}:`, ...listed(texts)];

const listed = (texts: readonly string[]): readonly Markdown[] =>
  texts.length === 0 ? [] : [markdownList(texts)];
