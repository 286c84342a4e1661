import { describe, expect, it } from 'vitest';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { limitsOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

/** Liners that no larger size is left for; the first and the fourth have read so much, and their rings gape. */
function planned(bores: string, more = '') {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 4, mains: 5, crankpins: 4 }\n',
    'e/limits.yaml': limitsOf(`ring_end_gap: { at: { top: { new: 0.35 to 0.55, wear: { max: 0.60 } } } }
cylinder_bore: { new: 100.000 to 100.022, wear: { max: 100.200 }, largest_bore: 100.200 }`),
    // Read twice: one that is far from the others might be a slip.
    'e/session.yaml': sessionOf(
      'teardown',
      `- { measure: cylinder_bore, at: { 1: ${bores}, 2: 100.010, 3: 100.010, 4: ${bores} } }
- { measure: ring_end_gap, at: { 1 top: 0.70, 2 top: 0.45, 3 top: 0.45, 4 top: 0.65 } }
`.repeat(2),
      more,
    ),
  });
  const jobs = jobsOf(context);
  return {
    jobs: jobs
      .filter(({ serves, operation }) => serves === undefined && operation !== 'measure')
      .map((job) => `${titleOf(job, context.engine.document)}: ${job.urgency}`),
    ordered: orderList(context, jobs)
      .filter(({ for: what }) => what !== 'opened engine')
      .map(({ count, what, for: job }) => `${count} ${what}, ${job}`),
  };
}

describe('rings whose ends gape', () => {
  it.each<readonly [string, string, string, readonly string[]]>([
    [
      'are renewed where the liner is only worn, and may stay',
      '100.110',
      '',
      ['renew rings 1 top, 4 top: must', 'renew cylinders 1, 4: should'],
    ],
    [
      'are renewed where somebody decided that it stays',
      '100.110',
      'found: [{ on: [cylinder 1, cylinder 4], is: inside the wear limit, do: reuse, by: TM }]\n',
      ['renew rings 1 top, 4 top: must'],
    ],
    ['come with a liner that must be renewed', '100.215', '', ['renew cylinders 1, 4: must']],
    [
      'come with a liner that was seen to be renewed',
      '100.110',
      'found: [{ on: [cylinder 1, cylinder 4], is: pitted outside, do: renew }]\n',
      ['renew cylinders 1, 4: must'],
    ],
    [
      'come with a liner whose renewal was agreed to',
      '100.110',
      'agreed: { by: Owner, date: 2026-03-02, items: ["renew cylinders 1, 4"] }\n',
      ['renew cylinders 1, 4: should'],
    ],
  ])('%s', (_, bores, more, jobs) => {
    expect([...planned(bores, more).jobs].sort()).toEqual([...jobs].sort());
  });

  it('are bought once with a liner that may stay', () => {
    expect(planned('100.110').ordered.filter((each) => each.includes('ring'))).toEqual([
      '2 ring sets, renew rings',
    ]);
  });
});
