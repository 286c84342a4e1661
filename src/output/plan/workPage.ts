import type { Page, Remarks, Section } from './page.ts';
import type { PlannedWords, PlanPage } from './planPage.ts';

/** The plan as a page: the answer, then each job with what it comes to, why, and what must follow. */
export const workPage = ({ title, standing, answer, jobs, seenBefore, cautions }: PlanPage): Page => ({
  title,
  about: [standing],
  answer,
  sections: [
    ...jobs.map(jobSection),
    ...(seenBefore.length === 0 ? [] : [{ title: SEEN_BEFORE, lines: seenBefore }]),
  ],
  cautions,
});

const SEEN_BEFORE = 'seen before it was taken apart, and measured again after the rebuild';

const jobSection = (
  { title, urgency, isSupporting, cuts, thicknesses, why, follows }: PlannedWords,
  index: number,
): Section => ({
  title,
  job: { number: index + 1, urgency, isSupporting },
  remarks: [
    ...cuts.flatMap(({ answer, workings }): readonly Remarks[] => [
      { label: '', texts: answer },
      { label: '', isWorking: true, texts: workings },
    ]),
    { label: '', texts: thicknesses },
    { label: 'why', texts: why },
    { label: 'then', texts: follows },
  ].filter(({ texts }) => texts.length > 0),
});
