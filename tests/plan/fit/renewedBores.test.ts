import { expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const LIMITS = `cylinder_bore: { new: 100.000 to 100.022, wear: { max: 100.200 }, largest_bore: 100.200 }
piston_diameter: { new: 99.870 to 99.890, wear: { min: 99.800 } }
piston_clearance: { new: 0.110 to 0.152, wear: { max: 0.300 } }`;
const WORN = `- { measure: cylinder_bore, at: { 1: 100.110, 2: 100.262, 3: 100.231, 4: 100.110 } }
- { measure: piston_diameter, at: { 1: 99.861, 2: 99.842, 3: 99.845, 4: 99.859 } }
- { measure: piston_crack_test, at: { 3: fail } }`;
const YES =
  'agreed: { by: Owner, date: 2026-02-08, items: ["renew cylinders 2, 3", "renew pistons 2, 3"] }\n';
const RENEWED = sessionOf(
  'machined',
  '- { measure: cylinder_bore, at: { 2: 100.011, 3: 100.010 } }',
  'replaced: [{ part: liners, at: [2, 3] }]\n',
).replace('02-03', '02-18');

function shelfOf(more: Record<string, string> = {}) {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml': `kind: stock
pistons: [{ mark: Q1, diameter: 99.880 }, { mark: Q2, diameter: 99.882 }, { mark: Q3, diameter: 99.879 }]
`,
    'e/engine.yaml':
      'kind: engine\nname: Saw\nlayout: { cylinders: 4 }\njob: { customer: Orchard sawmill (invented) }\n',
    'e/limits.yaml': limitsOf(LIMITS),
    'e/a.yaml': sessionOf('teardown', WORN, YES),
    ...more,
  });
  const [pistons] = fitPage(fitsOf(context), context, []).sections;
  return {
    chosen: pistons?.table?.rows.map(([at]) => (typeof at === 'object' ? at.text : at)) ?? [],
    lines: pistons?.lines,
    order: orderList(context, jobsOf(context))
      .filter(({ what }) => /^pistons?$/.test(what))
      .map(({ count, onShelf, when, for: name }) => [count, onShelf, when, name]),
  };
}

it('pistons wait for the bores that are to be renewed and are agreed to, and for no others', () => {
  const { chosen, lines } = shelfOf();
  expect(chosen).toEqual([]);
  expect(lines).toEqual([
    'cylinders 2, 3 are to be renewed: measure the new ones, and say `replaced:` in that session',
  ]);
});

it('pistons are chosen for the new bores, whatever only should be done at the others', () => {
  const { chosen, lines } = shelfOf({ 'e/b.yaml': RENEWED });
  expect(chosen).toEqual(['2', '3']);
  expect(lines).toEqual(['not every piston was weighed']);
});

it('what is agreed to takes from the shelf before what is not', () => {
  expect(shelfOf({ 'e/b.yaml': RENEWED }).order).toEqual([
    [1, 1, 'now', 'renew pistons'],
    [1, 1, 'now', 'choose pistons'],
    [2, 1, 'after the yes', 'renew pistons, not agreed yet'],
  ]);
});
