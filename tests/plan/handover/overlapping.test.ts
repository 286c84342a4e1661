import { describe, expect, it } from 'vitest';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { answerTo } from '../../../src/plan/handover/answer.ts';
import { byYes } from '../../../src/plan/handover/byYes.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { planContext } from '../../../src/plan/work/context.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf, shopOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
rod_bearing_clearance: { new: 0.0010 to 0.0030 }`;

/** All three mains need 0.020 under; two bores are to be bored to a step each. */
const WORN = [1, 2]
  .map(
    () => `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9960, 2: 2.9960, 3: 2.9880 } }
- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1415, 3: 4.1255, 4: 4.1255 } }`,
  )
  .concat('- { measure: rod_bearing_clearance, with: fine, at: { 3: 0.0060, 4: 0.0060 } }')
  .join('\n');

const yesTo = (items: readonly string[], date = '2026-02-05'): string =>
  `{ by: Owner, date: ${date}, items: [${items.map((each) => `"${each}"`).join(', ')}] }`;

function saidTo(...all: readonly string[]) {
  const { engine, registry } = shopOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\nplan: { separate: [cylinders] }\n',
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/teardown.yaml': sessionOf('teardown', WORN, `agreed: [${all.join(', ')}]\n`),
  });
  if (engine === undefined) throw new Error('not sound');
  const { state } = reportWithPlan(engine, registry, {});
  if (state === undefined) throw new Error('no session');
  const agreements = agreementsOf(engine, registry, state.session);
  const jobs = jobsOf(planContext(engine, registry, state))
    .filter(({ serves }) => serves === undefined)
    .flatMap((job) => byYes(job, agreements));
  return {
    yes: jobs.flatMap((job) =>
      answerTo(job, agreements)?.kind === 'yes' ? [titleOf(job, engine.document)] : [],
    ),
    told: state.findings
      .filter(({ code }) => code === 'plan/unknown-work' || code === 'plan/other-work')
      .map(({ message }) => message),
  };
}

const MAINS = 'grind main journals 1 to 3';

describe('of lines of one yes that name the same places', () => {
  it.each([
    ['the same twice', ['grind mains', 'grind main journal 2']],
    ['by the part and by its whole', ['grind crankshaft', 'grind main journals 1 to 3']],
    ['by some places and by others', ['grind mains 1 and 2', 'grind mains 2 to 3']],
    ['with a size and without', ['grind mains', 'grind main journals to 0.020 under']],
  ])('%s are one yes', (_, items) => {
    expect(saidTo(yesTo(items))).toEqual({ yes: [MAINS], told: [] });
  });

  it.each([
    ['all places of its line', ['renew rod shell 3', 'renew rod shell 4'], 'choose rod shells 3, 4'],
    ['one of them', ['renew rod shell 3'], 'choose rod shell 3'],
  ])('what is chosen anew is agreed to by a line for each: %s', (_, items, yes) => {
    expect(saidTo(yesTo(items))).toEqual({ yes: [yes], told: [] });
  });

  it('the sizes of places of a job count each at its own', () => {
    const both = ['bore cylinder 1 to 0.010 over', 'bore cylinder 2 to 0.020 over'];
    expect(saidTo(yesTo(both))).toEqual({ yes: ['bore cylinders 1, 2'], told: [] });
    const crossed = ['bore cylinder 2 to 0.010 over', 'bore cylinder 1 to 0.020 over'];
    const { yes, told } = saidTo(yesTo(crossed));
    expect(yes).toEqual([]);
    expect(told).toEqual([
      `the yes of 2026-02-05 is to ${crossed.join(' and ')}, and the plan is to bore cylinders 1, 2 to 0.010 over, 0.020 over: ask again`,
    ]);
  });

  it.each([
    [['grind mains to 0.020 under', 'grind main journals 1 to 3 to 0.010 under']],
    [['grind mains to 0.010 under', 'grind main journal 2 to 0.020 under']],
  ])('two sizes of one place are no yes, and both lines are named: %s', (items) => {
    expect(saidTo(yesTo(items))).toEqual({
      yes: [],
      told: [
        `the yes of 2026-02-05 is to two sizes at one place, ${items.join(' and ')}, and the plan is to ${MAINS} to 0.020 under: ask again`,
      ],
    });
  });

  it('of two days the later is told', () => {
    expect(
      saidTo(yesTo(['grind mains to 0.010 under']), yesTo(['grind mains to 0.030 under'], '2026-02-07')).told,
    ).toEqual([
      `the yes of 2026-02-07 is to 0.030 under, and the plan is to ${MAINS} to 0.020 under: ask again`,
    ]);
  });
});
