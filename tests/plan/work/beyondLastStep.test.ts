import { describe, expect, it } from 'vitest';
import { agreedFindings } from '../../../src/plan/handover/agreedFindings.ts';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { answerTo } from '../../../src/plan/handover/answer.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { planContext } from '../../../src/plan/work/context.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1560 }`;

/** Mains and bores are read twice: one that is so far from the others might be a slip. */
const worn = (main: string, bore: string): string =>
  [
    ...[1, 2].flatMap(() => [
      `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9960, 2: 2.9960, 3: ${main} } }`,
      `- { measure: cylinder_bore, with: bore, at: { 1: ${bore}, 2: 4.1315, 3: 4.1315, 4: 4.1315 } }`,
    ]),
    '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4968, 2: 2.4968, 3: 2.4968, 4: 2.4968 } }',
  ].join('\n');

function planOf(main: string, bore: string, more = '', later: Files = {}) {
  const files: Files = {
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf('teardown', worn(main, bore), more),
    ...later,
  };
  const report = reportOf(files);
  const { engine, registry, state } = report;
  if (state === undefined) throw new Error('no session');
  const context = planContext(engine, registry, state);
  const jobs = jobsOf(context);
  const agreements = agreementsOf(engine, registry, state.session);
  return {
    titles: jobs.map((job) => titleOf(job, engine.document)),
    order: orderList(context, jobs).map(({ count, what, size, when }) => [count, what, size, when]),
    told: agreedFindings(report, state).map(({ code }) => code),
    answers: jobs.flatMap((job) => {
      const answer = answerTo(job, agreements);
      return answer === undefined ? [] : [`${titleOf(job, engine.document)}: ${answer.kind}`];
    }),
  };
}

/** As a third journal, and as a first bore, beyond every step. */
const [SCRAP_MAIN, SCRAP_BORE] = ['2.9670', '4.1570'];

describe('a crankshaft with a journal beyond its last step', () => {
  it('is renewed, and nothing of it is cut, tested or washed', () => {
    expect(planOf(SCRAP_MAIN, '4.1315').titles).toEqual([
      'clean block',
      'bore cylinders 1 to 4',
      'renew crankshaft',
      'weigh and balance pistons',
      'wash block',
    ]);
  });

  it('is ordered, and its shells are those of the new one', () => {
    const { order } = planOf(SCRAP_MAIN, '4.1255');
    expect(order).toContainEqual([1, 'crankshaft', 'as fitted', 'now']);
    expect(order).toContainEqual([3, 'main shell pairs', 'by the new crankshaft', 'after measuring']);
    expect(order).toContainEqual([4, 'rod shell pairs', 'by the new crankshaft', 'after measuring']);
    expect(order.map(([, what]) => what)).not.toContain('main journals');
  });

  it('is not what a yes to grinding was to', () => {
    const agreed = 'agreed: { by: Owner, items: [grind main journals, bore cylinders] }\n';
    const { answers, told } = planOf(SCRAP_MAIN, '4.1315', agreed);
    expect(told).toEqual(['plan/other-work']);
    expect(answers).toEqual([
      'clean block: yes',
      'bore cylinders 1 to 4: yes',
      'renew crankshaft: another',
      'weigh and balance pistons: yes',
      'wash block: yes',
    ]);
  });

  it('is one that is cracked as well', () => {
    const cracked = 'found: [{ on: crankshaft, is: cracked, do: renew }]\n';
    const { titles } = planOf('2.9960', '4.1315', cracked);
    expect(titles.filter((each) => /crank|journal/.test(each))).toEqual(['renew crankshaft']);
  });
});

it('a bore beyond its last step is renewed alone, and the others go to the step that they need', () => {
  expect(planOf('2.9985', SCRAP_BORE).titles.filter((each) => /cylinder/.test(each))).toEqual([
    'bore cylinders 2 to 4',
    'renew cylinder 1',
  ]);
});

it('ground less far than its session says, is ground to that size, and not condemned', () => {
  const short = sessionOf(
    'machined',
    '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9885, 3: 2.9885 } }\n'.repeat(2),
    'machined: [{ part: main journals, size: 0.020 under }]\n',
  ).replace(/date: .*/, 'date: 2026-03-01');
  const { titles } = planOf('2.9960', '4.1255', '', { 'e/ground.yaml': short });
  expect(titles).toContain('grind main journals 1 to 3');
  expect(titles).not.toContain('renew crankshaft');
});

describe('a part that is said to be machined', () => {
  const SAID = 'fitted: { crankshaft: { main: 0.010 under }, cylinders: { size: 0.020 over } }\n';
  const sizes = (main: string, bore: string) =>
    planOf(main, bore, SAID).order.flatMap(([, what, size]) =>
      what === 'pistons' || what === 'main shell pairs' ? [[what, size]] : [],
    );

  it('and has not come to that size is machined to it, and to none beyond', () => {
    expect(sizes('2.9900', '4.1440')).toEqual([
      ['pistons', '0.020 over'],
      ['main shell pairs', '0.010 under'],
    ]);
  });

  it('and is worn beyond it goes to the next', () => {
    expect(sizes('2.9860', '4.1520')).toEqual([
      ['pistons', '0.030 over'],
      ['main shell pairs', '0.020 under'],
    ]);
  });
});
