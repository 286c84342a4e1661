import { describe, expect, it } from 'vitest';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { limitsOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

const PLAY = 'small_end_clearance: { new: 0.020 to 0.039, wear: { max: 0.080 } }';

interface Said {
  readonly bore: string;
  readonly pin?: string;
  readonly pins?: string;
  readonly play?: string;
  readonly more?: string;
}

/** Of cylinder 2; the others are as they were made. Read twice: one that is far from the others might be a slip. */
function planned({ bore, pins = '34.996', pin = pins, play = PLAY, more = '' }: Said) {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 4, mains: 5, crankpins: 4 }\n',
    'e/limits.yaml': limitsOf(`piston_pin_diameter: { new: { min: 34.990 }, wear: { min: 34.980 } }
small_end_bore: { new: 35.020 to 35.033, wear: { max: 35.070 } }
${play}`),
    'e/session.yaml': sessionOf(
      'teardown',
      `- { measure: piston_pin_diameter, at: { 1: ${pins}, 2: ${pin}, 3: ${pins}, 4: ${pins} } }
- { measure: small_end_bore, at: { 1: 35.030, 2: ${bore}, 3: 35.031, 4: 35.030 } }
`.repeat(2),
      more,
    ),
  });
  const jobs = jobsOf(context);
  return {
    jobs: jobs
      .filter(({ serves }) => serves === undefined)
      .map((job) => `${titleOf(job, context.engine.document)}: ${job.urgency}`),
    ordered: orderList(context, jobs)
      .filter(({ for: what }) => what !== 'opened engine')
      .map(({ count, what }) => `${count} ${what}`),
  };
}

describe('a small end that is worn', () => {
  it.each<readonly [string, Said, readonly string[], readonly string[]]>([
    ['takes a new bush', { bore: '35.099' }, ['renew small end bush 2: must'], ['1 small end bush']],
    [
      'takes the bush that was found worn as well',
      { bore: '35.099', more: 'found: [{ on: small end bush 2, is: worn oval, do: renew }]\n' },
      ['renew small end bush 2: must'],
      ['1 small end bush'],
    ],
    [
      'takes a new bush where it is inside its wear limit, and its pin runs too loose in it',
      { bore: '35.060', pin: '34.990', play: PLAY.replace('0.080', '0.060') },
      ['renew small end bush 2: must'],
      ['1 small end bush'],
    ],
    [
      'takes a new pin as well where that is out itself',
      { bore: '35.099', pin: '34.970' },
      ['renew piston pin 2: must', 'renew small end bush 2: must'],
      ['1 piston pin', '1 small end bush'],
    ],
    [
      'takes a new rod where pins are pressed in',
      { bore: '35.099', pins: '35.050', play: 'small_end_clearance: { new: -0.040 to -0.010 }' },
      ['renew connecting rod 2: must'],
      ['1 connecting rod'],
    ],
    [
      'takes no bush where the pin alone is out',
      { bore: '35.030', pin: '34.945' },
      ['renew piston pin 2: must'],
      ['1 piston pin'],
    ],
  ])('%s', (_, said, jobs, ordered) => {
    const plan = planned(said);
    expect(plan.jobs.filter((each) => /bush|rod|pin 2/.test(each))).toEqual(jobs);
    expect(plan.ordered.filter((each) => /bush|rod|pin/.test(each))).toEqual(ordered);
  });
});
