import { expect, it } from 'vitest';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const LIMITS = `piston_diameter: { new: 99.870 to 99.890, wear: { min: 99.800 } }
piston_clearance: { new: 0.110 to 0.152, wear: { max: 0.300 } }`;
/** Piston 2 is out of its clearance, and its bore is not measured on both axes yet; 1 and 4 are worn. */
const WORN = `- { measure: piston_diameter, at: { 1: 99.861, 2: 99.842, 4: 99.859 } }
- { measure: piston_clearance, at: { 2: 0.310 } }`;

function pistonsOf(agreed: string, more = '') {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml': 'kind: stock\npistons: [{ mark: Q1, diameter: 99.880 }, { mark: Q2, diameter: 99.882 }]\n',
    'e/engine.yaml': `kind: engine\nname: Saw\nlayout: { cylinders: 4 }\n${more}`,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/a.yaml': sessionOf('teardown', WORN, agreed),
  });
  return orderList(context, jobsOf(context))
    .filter(({ what }) => /^pistons?$/.test(what))
    .map(({ count, onShelf, for: name }) => `${name}: ${onShelf} of ${count} on the shelf`);
}

const CUSTOMER = 'job: { customer: Orchard sawmill (invented) }\n';
const yes = (item: string): string => `agreed: { by: Owner, date: 2026-02-08, items: ["${item}"] }\n`;

it('what must be done takes from the shelf before what only should be', () => {
  expect(pistonsOf('')).toEqual(
    expect.arrayContaining(['choose pistons: 1 of 1 on the shelf', 'renew pistons: 1 of 2 on the shelf']),
  );
});

it('what is agreed to takes from the shelf before what must be done and is not agreed to', () => {
  expect(pistonsOf(yes('renew pistons 1, 4'), CUSTOMER)).toEqual(
    expect.arrayContaining([
      'renew pistons: 2 of 2 on the shelf',
      'choose pistons, not agreed yet: 0 of 1 on the shelf',
    ]),
  );
  expect(pistonsOf(yes('renew piston 2'), CUSTOMER)).toEqual(
    expect.arrayContaining([
      'choose pistons: 1 of 1 on the shelf',
      'renew pistons, not agreed yet: 1 of 2 on the shelf',
    ]),
  );
});
