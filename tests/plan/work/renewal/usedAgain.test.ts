import { describe, expect, it } from 'vitest';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { limitsOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

/** Read twice: one that is far from the others might be a slip. */
const read = (id: string, ...values: readonly string[]): string =>
  `- { measure: ${id}, at: { ${values.map((value, index) => `${index + 1}: ${value}`).join(', ')} } }\n`.repeat(
    2,
  );

const PINS = read('piston_pin_diameter', '34.990', '34.991', '34.990', '34.991');
const BORES = read('cylinder_bore', '100.110', '100.010', '100.010', '100.110');

function planned(blocks: string, found: string, by = '') {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 4, mains: 5, crankpins: 4 }\n',
    'e/limits.yaml': limitsOf(`piston_pin_diameter: { new: 34.994 to 35.000, wear: { min: 34.980 } }
cylinder_bore: { new: 100.000 to 100.022, wear: { max: 100.200 }, largest_bore: 101.000 }`),
    'e/session.yaml': sessionOf('teardown', blocks, `${by}found: [${found}]\n`),
  });
  const jobs = jobsOf(context);
  return {
    jobs: jobs
      .filter(({ serves, operation }) => serves === undefined && operation !== 'measure')
      .map((job) => `${titleOf(job, context.engine.document)}: ${job.urgency}`),
    ordered: orderList(context, jobs)
      .filter(({ for: what }) => what !== 'opened engine')
      .map(({ count, what }) => `${count} ${what}`),
  };
}

const PINS_AGAIN = '{ on: piston pins, is: worn inside the wear limit, do: reuse, by: TM }';

describe('what somebody decided to use again as it is worn', () => {
  it.each<readonly [string, string, string, readonly string[], readonly string[]]>([
    ['is not renewed, and not ordered', PINS, PINS_AGAIN, [], []],
    [
      'is renewed at the places that were not named',
      PINS,
      PINS_AGAIN.replace('piston pins', '[piston pin 1, piston pin 2]'),
      ['renew piston pins 3, 4: should'],
      ['2 piston pins'],
    ],
    [
      'is renewed where nobody is named who decided',
      PINS,
      PINS_AGAIN.replace(', by: TM', ''),
      ['renew piston pins 1 to 4: should'],
      ['4 piston pins'],
    ],
    [
      'is renewed where it is out',
      read('piston_pin_diameter', '34.990', '34.970', '34.990', '34.991'),
      PINS_AGAIN,
      ['renew piston pin 2: must'],
      ['1 piston pin'],
    ],
    [
      'is not cut',
      BORES,
      '{ on: [cylinder 1, cylinder 4], is: inside the wear limit, do: reuse, by: TM }',
      [],
      [],
    ],
  ])('%s', (_, blocks, found, jobs, ordered) => {
    const plan = planned(blocks, found);
    expect(plan.jobs.filter((each) => !each.startsWith('decide'))).toEqual(jobs);
    expect(plan.ordered).toEqual(ordered);
  });

  it('may be said by the one who made the session', () => {
    expect(planned(PINS, PINS_AGAIN.replace(', by: TM', ''), 'by: TM\n').jobs).toEqual([]);
  });
});
