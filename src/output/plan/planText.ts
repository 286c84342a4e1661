import { type Line, line } from '../escape/line.ts';
import { hanging } from '../terminal/hanging.ts';
import { PAGE } from '../terminal/onPage.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import type { JobWords } from './jobWords.ts';
import type { PlanPage } from './planPage.ts';

/** The plan as text: the answer, then each job with what it comes to, why, and what must follow. */
export function planLines(page: PlanPage, style: TextStyle): readonly Line[] {
  const width = Math.min(style.width, PAGE);
  return [
    ...wrap(page.title, width).map(style.paint.strong),
    ...wrap(page.standing, width).map(style.paint.faint),
    '',
    ...page.answer.flatMap((each) => wrap(each, width)),
    ...page.jobs.flatMap((job, index) => {
      const lines = jobLines(job, index + 1, width, style);
      return job.isSupporting && page.jobs[index - 1]?.isSupporting ? lines : ['', ...lines];
    }),
    ...(page.cautions.length === 0 ? [] : ['']),
    ...page.cautions.flatMap((each) => wrap(each, width)).map(style.paint.faint),
  ];
}

function jobLines(
  { title, urgency, cuts, why, follows }: JobWords,
  number: number,
  width: number,
  { paint }: TextStyle,
): readonly Line[] {
  const mark = `${String(number).padStart(2)}  `;
  const [first = '', ...rest] = hanging(mark, title, width - urgency.length - 2, '');
  const gap = ' '.repeat(Math.max(2, width - widthOf(first) - urgency.length));
  const colour = urgency === 'must' ? paint.bad : urgency === 'should' ? paint.notice : paint.faint;
  return [
    line`${paint.strong(first)}${gap}${colour(urgency)}`,
    ...rest,
    ...cuts.flatMap(({ answer, workings }) => [
      ...answer.flatMap((each) => hanging('', each, width, INDENT)),
      ...workings.flatMap((each) => hanging('', each, width, `${INDENT}  `)).map(paint.faint),
    ]),
    ...labelled('why   ', why, width),
    ...labelled('then  ', follows, width),
  ];
}

const INDENT = '    ';

/** The label before the first, the others under it. */
const labelled = (label: string, texts: readonly string[], width: number): readonly string[] =>
  texts.flatMap((text, index) =>
    hanging(index === 0 ? label : ' '.repeat(label.length), text, width, INDENT),
  );
