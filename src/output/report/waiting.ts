import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import { openBoxes } from '../../plan/closing/boxes.ts';
import type { Closing } from '../../plan/closing/closing.ts';
import { agreementsOf } from '../../plan/handover/agreement.ts';
import { isAgreed } from '../../plan/handover/answer.ts';
import { sendings } from '../../plan/handover/sendings.ts';
import { MACHINING } from '../../plan/work/operation.ts';
import { workPlan } from '../../plan/work/workPlan.ts';

/** For whom an engine waits: its customer's yes, a machine shop, parts, measuring, an initial. */
export function waitingTexts(
  { engine, registry }: EngineReport,
  state: StateReport,
  closing: Closing,
): readonly string[] {
  const jobs = workPlan(engine, registry, state).jobs.filter(({ serves }) => serves === undefined);
  const agreements = agreementsOf(engine, registry, state.session);
  const unagreed = jobs.filter(
    (job) => job.urgency !== 'may' && MACHINING.includes(job.operation) && !isAgreed(job, agreements),
  );
  const renewals = jobs.filter(({ operation }) => operation === 'renew');
  const away = sendings(engine).filter(({ returned }) => returned === undefined);
  const toMeasure = closing.rows.filter(({ judgement }) => judgement.verdict !== 'out');
  return [
    ...named(
      "the customer's yes",
      unagreed.map(({ name }) => name),
    ),
    ...named(
      'machine shop',
      away.map(({ part, to, due }) => `${part} at ${to}${due === undefined ? '' : `, due ${due}`}`),
    ),
    ...named(
      'parts',
      renewals.map(({ name }) => name),
    ),
    ...named('measuring', toMeasure.length === 0 ? [] : [`${toMeasure.length} to measure`]),
    ...named('initials', openBoxes(closing.boxes)),
  ];
}

const named = (what: string, texts: readonly string[]): readonly string[] =>
  texts.length === 0 ? [] : [`${what}: ${[...new Set(texts)].join(', ')}`];
