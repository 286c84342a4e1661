import { type Finding, finding } from '../../checks/finding.ts';
import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import { OTHER_WORK, UNKNOWN_WORK } from '../../checks/open/ofPlan.ts';
import type { NamedWork } from '../../documents/planning/namedWork.ts';
import { planContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { jobsOf } from '../work/jobs.ts';
import { titleOf } from '../work/jobTitle.ts';
import { isLineOf } from './agreedLine.ts';
import { type Agreements, agreementsOf } from './agreement.ts';
import { answerTo, ofDate } from './answer.ts';
import { askedOf } from './asked.ts';
import { madeOtherwise } from './madeOtherwise.ts';

/** What a customer is said to have agreed to, held against the plan: what is no line of it, and what is another one now. */
export function agreedFindings({ engine, registry }: EngineReport, state: StateReport): readonly Finding[] {
  const isAny = [engine.document, ...state.run].some(({ handedOver }) => handedOver.agreed.length > 0);
  if (!isAny) return [];
  const agreements = agreementsOf(engine, registry, state.session);
  const context = planContext(engine, registry, state);
  const others = otherWork(askedOf(jobsOf(context), context, agreements), agreements);
  return [
    ...unknownWork(agreements, new Set(others.flatMap(({ items }) => items))),
    ...madeOtherwise(agreements, state),
    ...others.map(({ place, message }) => finding(OTHER_WORK, place, message)),
  ];
}

/** What was said to other work on the same part is told as that. */
function unknownWork({ all, engine }: Agreements, told: ReadonlySet<NamedWork>): readonly Finding[] {
  return all.flatMap((dated) =>
    dated.agreement.items.flatMap((item, index) => {
      if (told.has(item)) return [];
      for (const jobs of dated.plans()) if (isLineOf(item, jobs, engine)) return [];
      const lines = dated
        .plan()
        .flatMap((job) => (job.serves === undefined ? [titleOf(job, engine.document)] : []));
      const before = dated.agreement.items[index - 1];
      if (before !== undefined && isPlaceAlone(item)) return [commaFinding(before, item)];
      const has = lines.length === 0 ? 'which has none' : `which has ${lines.join(', ')}`;
      return [finding(UNKNOWN_WORK, item.place, `agreed to ${item.name}: no line of the plan, ${has}`)];
    }),
  );
}

/** The 5 that is left of `renew rod shells 2, 5`. */
const isPlaceAlone = ({ name, operation }: NamedWork): boolean =>
  operation === undefined && /^(?:and )?\w{0,3}\d\w{0,3}(?: (?:to|and) \w{1,6})?$/.test(name.trim());

const commaFinding = (before: NamedWork, { name, place }: NamedWork): Finding =>
  finding(
    UNKNOWN_WORK,
    place,
    `agreed to ${name}: a comma begins a new item; put the line in quotes, as in "${before.name}, ${name}"`,
  );

const otherWork = (jobs: readonly Job[], agreements: Agreements) =>
  jobs.flatMap((job) => {
    const answer = answerTo(job, agreements);
    if (answer?.kind !== 'another') return [];
    const { items, to } = answer;
    const [first] = items;
    if (first === undefined) return [];
    const is = `${titleOf(job, agreements.engine.document)}${sizeText(job)}`;
    return [
      {
        items,
        place: first.place,
        message: `the yes${ofDate(answer)} is to ${to}, and the plan is to ${is}: ask again`,
      },
    ];
  });

function sizeText({ cut }: Job): string {
  const sizes = (cut?.groups ?? []).flatMap(({ deciding: { choice } }) =>
    choice.kind === 'step' ? [choice.step.name] : [],
  );
  return sizes.length === 0 ? '' : ` to ${[...new Set(sizes)].join(', ')}`;
}
