import { describe, expect, it } from 'vitest';
import { planPage } from '../../../../src/output/plan/planPage.ts';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { workPlan } from '../../../../src/plan/work/workPlan.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

const LIMITS = `cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1310 }
piston_diameter: { new: 4.1210 to 4.1220, wear: { min: 4.1200 } }
valve_guide_bore: { new: 0.3430 to 0.3440, wear: { max: 0.3460 } }`;
const twice = (block: string): string => `${block}\n${block}\n`;
/** The first beyond wear, two that only are worn, and a sound one. */
const LINERS = twice(
  '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1285, 3: 4.1284, 4: 4.1255 } }',
);
const GUIDES = twice(
  '- { measure: valve_guide_bore, at: { 1: { I: 0.3470, E: 0.3450 }, 2: { I: 0.3451, E: 0.3435 }, 3: { I: 0.3435, E: 0.3435 }, 4: { I: 0.3435, E: 0.3435 } } }',
);

const shop = (blocks: string, more = '', { limits = LIMITS, plan = '' } = {}): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in }\n${plan}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE.replace('crankpins: 4', 'crankpins: 4, valves: [I, E]'),
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('teardown', blocks, more),
});

const titlesOf = (files: Files): readonly string[] => {
  const context = contextOf(files);
  return jobsOf(context)
    .filter(({ serves }) => serves === undefined)
    .map((job) => `${titleOf(job, context.engine.document)} (${job.urgency})`);
};

describe('parts that are renewed one by one are as urgent as each of them is', () => {
  it.each<readonly [string, Files, readonly string[]]>([
    [
      'liners that largest_bore lets nobody bore',
      shop(LINERS),
      ['renew cylinder 1 (must)', 'renew cylinders 2, 3 (should)'],
    ],
    [
      'liners that are sold in no step',
      shop(LINERS, '', {
        limits: LIMITS.replace(', largest_bore: 4.1310', ''),
        plan: 'plan: { steps: { cylinders: [] } }\n',
      }),
      ['renew cylinder 1 (must)', 'renew cylinders 2, 3 (should)'],
    ],
    [
      'a liner that only is worn, and was seen to be split',
      shop(LINERS, 'found: [{ on: cylinder 3, is: split, do: renew }]\n'),
      ['renew cylinders 1, 3 (must)', 'renew cylinder 2 (should)'],
    ],
    [
      'a sound liner that was seen to be scored',
      shop(LINERS, 'found: [{ on: cylinder 4, is: scored, do: machine, depth: 0.002 }]\n'),
      ['renew cylinders 1, 4 (must)', 'renew cylinders 2, 3 (should)'],
    ],
    ['valve guides', shop(GUIDES), ['renew valve guide 1 I (must)', 'renew valve guides 1 E, 2 I (should)']],
    [
      'valve guides of which none is out',
      shop(GUIDES.replaceAll('0.3470', '0.3450')),
      ['renew valve guides 1 I to 2 I (should)'],
    ],
    [
      'pistons of liners that are renewed, which go in again or not by themselves',
      shop(
        `${LINERS}${twice('- { measure: piston_diameter, with: mic, at: { 1: 4.1195, 2: 4.1215, 3: 4.1205, 4: 4.1195 } }')}`,
      ),
      [
        'renew cylinder 1 (must)',
        'renew cylinders 2, 3 (should)',
        'renew pistons 1, 4 (must)',
        'renew piston 3 (should)',
      ],
    ],
  ])('%s', (_, files, titles) => expect(titlesOf(files)).toEqual(titles));

  it('and no sums are made for a bore that cannot be bored', () => {
    const { engine, registry, state } = contextOf(shop(LINERS));
    const [first] = planPage(workPlan(engine, registry, state)).jobs;
    expect(first?.cuts).toEqual([
      {
        answer: ['no larger size is left: renewed, and not bored'],
        size: ['no larger size is left: renewed, and not bored'],
        workings: [],
      },
    ]);
  });

  it('and they are ordered together, and take from the shelf but once', () => {
    const stock = { 'stock.yaml': 'kind: stock\nrings: [{ code: K, count: 2 }]\n' };
    const context = contextOf({ ...shop(LINERS), ...stock });
    const lines = orderList(context, jobsOf(context)).filter(({ for: name }) => name === 'renew cylinders');
    expect(lines.map(({ count, what, onShelf }) => `${count} ${what}, ${onShelf}`)).toEqual([
      '3 liners, 0',
      '3 ring sets, 2',
    ]);
  });
});

it('a bore past its last step is renewed, and the others are as urgent as they are', () => {
  const limits = LIMITS.replace('4.1310', '4.1560');
  const bores = twice(
    '- { measure: cylinder_bore, with: bore, at: { 1: 4.1570, 2: 4.1285, 3: 4.1255, 4: 4.1255 } }',
  );
  expect(titlesOf(shop(bores, '', { limits }))).toEqual([
    'bore cylinders 2 to 4 (should)',
    'renew cylinder 1 (must)',
  ]);
});
