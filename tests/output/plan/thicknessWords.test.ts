import { describe, expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { planPage } from '../../../src/output/plan/planPage.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { limitsOf, reportOf, sessionOf } from '../../shopOf.ts';

const LIMITS = limitsOf('liner_protrusion: { new: 0.050 to 0.120 }');

function pagesOf({ limits = LIMITS, more = '' }) {
  const { engine, registry, state } = reportOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml': 'kind: stock\nliner_shims: [{ code: S05, thickness: 0.05, count: 2 }]\n',
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 4, mains: 1, crankpins: 4 }\n',
    'e/limits.yaml': limits,
    // Read twice: one that is far from the others might be a slip.
    'e/session.yaml': sessionOf(
      'trial',
      '- { measure: liner_protrusion, at: { 1: 0.150, 2: 0.020, 3: 0.030, 4: 0.030 } }\n'.repeat(2),
      more,
    ),
  });
  if (state === undefined) throw new Error('no session');
  const plan = workPlan(engine, registry, state);
  const job = planPage(plan).jobs.find(({ title }) => title === 'adjust liner protrusion');
  return { work: job?.thicknesses, fit: fitPage(fitsOf(plan.context), plan.context, []).sections[0]?.lines };
}

const TOO_HIGH =
  '1: stands too high, and no shim lowers it: take a shim out where there is one, or have the counterbore cut deeper';

describe('the work on liners that do not stand out as they should', () => {
  it('says which shim goes under which liner, how many of the shelf and how many to order', () => {
    expect(pagesOf({}).work).toEqual([
      TOO_HIGH,
      '2: 1 liner shim to order, about 0.065 mm thick',
      '3, 4: 2 liner shims S05 of the shelf, 0.050 mm thick each',
    ]);
  });

  it('says the least where limits state one side alone', () => {
    const limits = limitsOf('liner_protrusion: { new: { min: 0.050 } }');
    expect(pagesOf({ limits }).work).toEqual([
      '2: 1 liner shim to order, at least 0.030 mm thick: limits state no other side',
      '3, 4: 2 liner shims to order, at least 0.020 mm thick each: limits state no other side',
    ]);
  });

  it('waits for the new liner', () => {
    const more = 'found: [{ on: liner 2, is: cracked, do: renew }]\n';
    expect(pagesOf({ more }).work).toContain(
      '2: read it again after renew cylinders, then choose the liner shim (plan --fit)',
    );
  });
});

it('no shim is to be got for a liner that stands too high', () => {
  expect(pagesOf({}).fit).toEqual([
    '2: what is in stock brings no more of them inside; the ideal thickness is what to get',
    TOO_HIGH,
  ]);
});
