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
  const page = fitPage(fitsOf(plan.context), plan.context, []);
  const [section] = page.sections;
  return {
    work: job?.thicknesses,
    fit: section?.lines,
    places: section?.table?.rows.map((row) => row[0]),
    answer: page.answer,
  };
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
    const { work, fit, places, answer } = pagesOf({ more });
    expect(work).toContain(
      '2: first renew cylinders; then read it again, and choose the liner shim (plan --fit)',
    );
    expect(fit?.at(-1)).toBe('2: first renew cylinders; then read it again, and choose the liner shim');
    // Of the others one stands too high.
    expect(answer).toEqual([
      'not everything has its part: what lacks one says why',
      'liner shim waits for a new reading of liner protrusion 2',
    ]);
    expect(places).toEqual(['1', '3', '4'].map((text) => expect.objectContaining({ text })));
  });
});

it('no shim is to be got for a liner that stands too high', () => {
  expect(pagesOf({}).fit).toEqual([
    '2: what is in stock brings no more of them inside; the ideal thickness is what to get',
    TOO_HIGH,
  ]);
});

describe('lash buckets', () => {
  const pageOf = (more: string, blocks = '') => {
    const { engine, registry, state } = reportOf({
      'shop.yaml':
        'kind: shop\nunits: { length: mm }\ncharacteristics:\n  lash_bucket_thickness: { label: lash bucket thickness, positions: valve, quantity: length }\n',
      'stock.yaml': 'kind: stock\nlash_buckets: [{ code: 240, thickness: 2.40, count: 3 }]\n',
      'e/engine.yaml':
        'kind: engine\nname: Pump\nlayout: { cylinders: 4, mains: 1, crankpins: 4, valves: [intake] }\n',
      'e/limits.yaml': limitsOf(
        'valve_lash_cold: { new: 0.25 to 0.35 }\nvalve_seat_runout: { wear: { max: 0.05 } }\nvalve_stem_clearance: { wear: { max: 0.10 } }',
      ),
      'e/session.yaml': sessionOf(
        'teardown',
        `- { measure: valve_lash_cold, at: { 1: { intake: 0.20 }, 2: { intake: 0.30 } } }
- { measure: lash_bucket_thickness, at: { 1: { intake: 2.50 } } }\n${blocks}`,
        more,
      ),
    });
    if (state === undefined) throw new Error('no session');
    const { context } = workPlan(engine, registry, state);
    const page = fitPage(fitsOf(context), context, []);
    return { answer: page.answer, lines: page.sections[0]?.lines, table: page.sections[0]?.table };
  };

  it.each<readonly [string, readonly [string, string?], string]>([
    [
      'a head that is renewed',
      ['found: [{ on: cylinder head, is: cracked, do: renew }]\n'],
      'renew cylinder head',
    ],
    [
      'a seat that is renewed',
      ['found: [{ on: valve seat 1 intake, is: cracked, do: renew }]\n'],
      'renew valve seats',
    ],
    [
      'a seat that is cut',
      ['', '- { measure: valve_seat_runout, at: { 1: { intake: 0.09 } } }'],
      'machine or renew valve seats',
    ],
    [
      'a guide that is chosen anew',
      ['', '- { measure: valve_stem_clearance, at: { 1: { intake: 0.15 } } }'],
      'renew valve guides',
    ],
  ])('wait for %s', (_, [more, blocks], job) => {
    expect(pageOf(more, blocks)).toEqual({
      answer: ['nothing is chosen yet', 'lash bucket waits for a new reading of valve lash, cold 1 intake'],
      lines: [`1 intake: first ${job}; then read it again, and choose the lash bucket`],
    });
  });

  it('wait for no seat of another valve', () => {
    expect(pageOf('found: [{ on: valve seat 2 intake, is: cracked, do: renew }]\n').table?.rows).toHaveLength(
      1,
    );
  });
});
