import { amountText, formatLimit, named, printingOf } from '../../../checks/findings/readings.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { unitOfRow } from '../../../checks/judge/session.ts';
import type { Engine } from '../../../documents/assemble.ts';
import type { BandName } from '../../../documents/limits/bands.ts';
import { namedAt } from '../../../layout/naming.ts';
import { relateOne } from '../../../layout/relate.ts';
import type { Agreements } from '../../../plan/handover/agreement.ts';
import { answerTo, isAgreed, ofDate } from '../../../plan/handover/answer.ts';
import { askedOf } from '../../../plan/handover/asked.ts';
import type { CutGroup } from '../../../plan/work/cut.ts';
import type { Job } from '../../../plan/work/job.ts';
import { titleOf } from '../../../plan/work/jobTitle.ts';
import { URGENCIES, type Urgency } from '../../../plan/work/urgency.ts';
import type { WorkPlan } from '../../../plan/work/workPlan.ts';
import { worstOf } from '../../../plan/work/worst.ts';
import { formatNumber } from '../../../quantity/format.ts';
import type { Unit } from '../../../quantity/units.ts';
import { plural } from '../../../quantity/words.ts';
import { byMeasure } from '../../check/byMeasure.ts';
import type { Page, PageCell, Section } from '../page.ts';
import { glossOf } from './gloss.ts';

/** What we found and what it needs, for the person whose engine it is. */
export function customerPage(
  { jobs, context, seenBefore }: WorkPlan,
  agreements: Agreements,
  about: readonly string[],
): Page {
  const { engine } = agreements;
  const ofCustomer = askedOf(jobs, context, agreements);
  const asked = URGENCIES.flatMap((urgency) => ofCustomer.filter((job) => job.urgency === urgency));
  const open = asked.filter((job) => !isAgreed(job, agreements));
  const { customer, serial, number } = engine.document.job;
  const whose = [
    customer === undefined ? [] : [`for ${customer}`],
    serial === undefined ? [] : [`engine no. ${serial}`],
    number === undefined ? [] : [`job ${number}`],
  ].flat();
  return {
    title: `${engine.document.name}: what we found, and what it needs`,
    about: whose.length === 0 ? about : [whose.join(', '), ...about],
    answer: jobs.length > 0 && asked.length === 0 ? [OURS_ALONE] : answer(asked, open),
    sections: [
      ...URGENCIES.flatMap((urgency) => section(urgency, asked, agreements)),
      ...seenSection(seenBefore, engine),
      ...(asked.length === 0 ? [] : [{ title: 'Your answer', lines: answerLines(asked.length) }]),
    ],
    cautions:
      asked.length === 0
        ? []
        : [
            'The sizes come from the limits that stand in our records; the engine maker’s manual comes first.',
          ],
  };
}

/** Why it was taken apart: no work with a price of its own. */
function seenSection(rows: readonly Row[], engine: Engine): readonly Section[] {
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  const worst = byMeasure(rows).flatMap((group) => worstOf(group) ?? []);
  const lines = worst.flatMap((row) => measuredSentence(row, unitFor));
  return lines.length === 0
    ? []
    : [
        {
          title: 'What it showed before it was taken apart: we measure it again after the rebuild',
          lines,
        },
      ];
}

function answer(asked: readonly Job[], open: readonly Job[]): readonly string[] {
  if (asked.length === 0) return ['Nothing needs to be done: all that we measured is inside its limits.'];
  const counts = URGENCIES.flatMap((urgency) => {
    const count = asked.filter((job) => job.urgency === urgency).length;
    return count === 0 ? [] : [`${plural(count, 'job')} ${WORDS[urgency].counted}`];
  });
  const agreed = asked.length - open.length;
  const said = agreed === 0 ? [] : [`You have agreed to ${agreed} of them.`];
  return [`We found ${counts.join(', ')}.`, ...said, 'Nothing is machined before you have agreed to it.'];
}

const OURS_ALONE =
  'Nothing needs your answer: what is left to do is our own, or comes with what you have agreed to.';

const WORDS: Readonly<Record<Urgency, { readonly title: string; readonly counted: string }>> = {
  must: {
    title: 'Must be done: it cannot be used as it is',
    counted: 'that must be done',
  },
  should: {
    title: 'Should be done: worn, and still inside the last limit',
    counted: 'that should be done',
  },
  may: { title: 'May be done: inside its limits, and could be better', counted: 'that may be done' },
};

function section(urgency: Urgency, asked: readonly Job[], agreements: Agreements): readonly Section[] {
  const { engine } = agreements;
  const jobs = asked.filter((job) => job.urgency === urgency);
  if (jobs.length === 0) return [];
  return [
    {
      title: WORDS[urgency].title,
      table: {
        columns: [
          { heading: '', key: 'number', align: 'right' },
          { heading: 'what', key: 'what' },
          { heading: 'price', key: undefined },
          { heading: 'yes / no', key: 'agreed' },
          { heading: '', key: 'why' },
        ],
        rows: jobs.map((job) => [
          numberCell(asked.indexOf(job) + 1),
          titleOf(job, engine.document),
          '________',
          agreedCell(job, agreements),
          sentences(job, agreements).join(' '),
        ]),
      },
    },
  ];
}

/** Of all lines of the page: the customer answers by it. */
const numberCell = (number: number): PageCell => ({ text: String(number), value: number });

function agreedCell(job: Job, agreements: Agreements): PageCell {
  const answer = answerTo(job, agreements);
  if (answer?.kind !== 'yes') return { text: '________', value: null };
  const when = answer.agreement.date ?? answer.agreement.by;
  return { text: `yes, ${when}`, value: when };
}

/** What it is, why, and what it would come to: no statistics, and no words of the trade alone. */
function sentences(job: Job, agreements: Agreements): readonly string[] {
  const { engine } = agreements;
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  const seen = job.found.map(({ on, is }) => `Seen on ${on.join(', ')}: ${is}.`);
  const worst = worstOf(job.rows);
  const photos = job.found.flatMap((each) => each.photos);
  const answer = answerTo(job, agreements);
  return [
    ...(answer?.kind === 'another'
      ? [`Please answer again: your yes${ofDate(answer)} was to ${answer.to}.`]
      : []),
    glossOf(job),
    ...seen,
    ...job.rows.flatMap((row) => testedSentence(row, engine)),
    ...(worst === undefined ? [] : measuredSentence(worst, unitFor)),
    ...new Set(job.cut?.groups.map((group) => sizeSentence(group, unitFor))),
    ...(job.operation === 'renew' && (job.thicknesses ?? []).length > 0 ? [TOO_THIN] : []),
    ...(photos.length === 0 ? [] : [`Photographs: ${photos.join(', ')}.`]),
  ];
}

/** `Tested: connecting rod 4 is cracked.` */
export function testedSentence(
  { characteristic: { of, outcomes }, position, judgement }: Row,
  { parts, document: { layout } }: Engine,
): readonly string[] {
  const part = parts.find(of ?? '');
  if (part === undefined || outcomes === undefined || judgement.verdict !== 'out') return [];
  const at = relateOne(layout, position, part.family) ?? position;
  const what = part.family.isSingle ? part.label : namedAt(part.label, at);
  return [`Tested: ${what} is ${outcomes.fail}.`];
}

const BAND_WORDS: Readonly<Record<BandName, string>> = {
  target: 'we aim for',
  new: 'new parts may have',
  wear: 'the wear limit is',
  last: 'the last size allowed is',
};

export function measuredSentence(row: Row, unitFor: (row: Row) => Unit): readonly string[] {
  const printing = printingOf(row, unitFor);
  const [judged] = row.routes;
  const { past } = row.judgement;
  if (judged === undefined || past === undefined) return [];
  const most =
    past.limit.band === 'wear' || past.limit.band === 'last'
      ? ''
      : past.side === 'max'
        ? 'at most '
        : 'at least ';
  const limit = `${BAND_WORDS[past.limit.band]} ${most}${formatLimit(past.limit.amount, printing.unit, printing.decimals)}`;
  return [`Measured: ${named(row)} is ${amountText(judged, printing)}; ${limit}.`];
}

const TOO_THIN = 'It is too thin to be machined flat again, so it is renewed.';

function sizeSentence({ deciding: { choice, row } }: CutGroup, unitFor: (row: Row) => Unit): string {
  if (choice.kind === 'not provable')
    return 'How far it must be cut is not known before the damage is measured.';
  if (choice.kind === 'beyond the last step')
    return 'No size is left to which it could be cut, so it is renewed.';
  const { unit, decimals } = printingOf(row, unitFor);
  const { least, greatest, name } = choice.step;
  const [from, to] = [least, greatest].map((each) => formatNumber(each, unit, decimals));
  return `It becomes ${from} to ${to} ${unit.name} (${name} standard).`;
}

const answerLines = (count: number): readonly string[] => [
  `agreed to, by the numbers above${count === 1 ? '' : ` (1 to ${count})`}: ____________________`,
  'name, date and signature: ______________________________',
  'work that comes with a job, such as washing and crack testing, is in its price',
];
