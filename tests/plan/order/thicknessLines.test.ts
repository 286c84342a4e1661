import { describe, expect, it } from 'vitest';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const LIMITS = limitsOf('liner_protrusion: { new: 0.050 to 0.120 }');

interface Said {
  readonly at: string;
  readonly stock?: string;
  readonly limits?: string;
  readonly more?: string;
  readonly engine?: string;
  readonly blocks?: string;
  readonly shop?: string;
  readonly valves?: string;
}

function linesOf({
  at,
  stock = '',
  limits = LIMITS,
  more = '',
  engine = '',
  blocks = '',
  shop = '',
  valves = '',
}: Said) {
  const context = contextOf({
    'shop.yaml': `kind: shop\nunits: { length: mm }\n${shop}`,
    ...(stock === '' ? {} : { 'stock.yaml': `kind: stock\n${stock}` }),
    'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { cylinders: 4, mains: 1, crankpins: 4${valves} }\n${engine}`,
    'e/limits.yaml': limits,
    // Read twice: one that is far from the others might be a slip.
    'e/session.yaml': sessionOf(
      'trial',
      `- { measure: liner_protrusion, at: { ${at} } }\n`.repeat(2) + blocks,
      more,
    ),
  });
  return orderList(context, jobsOf(context))
    .filter(({ for: job }) => /^adjust/.test(job))
    .map(({ count, onShelf, what, size, code, when, for: job }) =>
      [`${count} (${onShelf})`, what, size, code ?? '-', when, job].join('; '),
    );
}

const LOW = '1: 0.080, 2: 0.030, 3: 0.030, 4: 0.020';

describe('an order list of liners that stand too low', () => {
  it('has a shim for each, of the thickness that brings it to the middle, where the shelf holds none', () => {
    expect(linesOf({ at: LOW })).toEqual([
      '2 (0); liner shims; about 0.055 mm; -; now; adjust liner protrusion 2, 3',
      '1 (0); liner shim; about 0.065 mm; -; now; adjust liner protrusion 4',
    ]);
  });

  it('takes those of the shelf, and orders what it lacks', () => {
    const stock = 'liner_shims: [{ code: S05, thickness: 0.05, count: 2 }]\n';
    expect(linesOf({ at: LOW, stock })).toEqual([
      '2 (2); liner shims; 0.050 mm; S05; now; adjust liner protrusion 2, 3',
      '1 (0); liner shim; about 0.065 mm; -; now; adjust liner protrusion 4',
    ]);
  });

  it('says the least that is wanting where limits state nothing to aim at', () => {
    const limits = limitsOf('liner_protrusion: { new: { min: 0.050 } }');
    expect(linesOf({ at: LOW, limits })).toEqual([
      '2 (0); liner shims; at least 0.020 mm; -; now; adjust liner protrusion 2, 3',
      '1 (0); liner shim; at least 0.030 mm; -; now; adjust liner protrusion 4',
    ]);
  });

  it('has none for one that stands too high, which no shim lowers', () => {
    expect(linesOf({ at: '1: 0.080, 2: 0.150, 3: 0.080, 4: 0.080' })).toEqual([]);
  });

  it('waits where the liner is renewed', () => {
    const renewed = 'found: [{ on: liner 2, is: cracked, do: renew }]\n';
    expect(linesOf({ at: LOW, more: renewed })).toEqual([
      '1 (0); liner shim; about 0.055 mm; -; now; adjust liner protrusion 3',
      '1 (0); liner shim; about 0.065 mm; -; now; adjust liner protrusion 4',
      '1 (0); liner shim; by plan --fit; -; after measuring; adjust liner protrusion 2',
    ]);
  });

  it('waits where the deck is surfaced', () => {
    const limits = limitsOf(
      'liner_protrusion: { new: 0.050 to 0.120 }\ndeck_flatness: { wear: { max: 0.050 } }',
    );
    expect(linesOf({ at: LOW, limits, blocks: '- { measure: deck_flatness, value: 0.100 }' })).toEqual([
      '3 (0); liner shims; by plan --fit; -; after measuring; adjust liner protrusion 2 to 4',
    ]);
  });

  it('waits for the yes of a customer', () => {
    expect(linesOf({ at: LOW, engine: 'job: { customer: Owner }\n' })[1]).toBe(
      '1 (0); liner shim; about 0.065 mm; -; after the yes; adjust liner protrusion 4, not agreed yet',
    );
  });
});

describe('an order list of valves whose lash is out, where the bucket that is fitted was read', () => {
  const valves = {
    at: '1: 0.080, 2: 0.080, 3: 0.080, 4: 0.080',
    valves: ', valves: [intake]',
    shop: 'characteristics:\n  lash_bucket_thickness: { label: lash bucket thickness, positions: valve, quantity: length }\n',
    limits: limitsOf('valve_lash_cold: { new: 0.190 to 0.290 }'),
    blocks: `- { measure: valve_lash_cold, at: { 1: { intake: 0.40 }, 2: { intake: 0.40 } } }
- { measure: lash_bucket_thickness, at: { 1: { intake: 5.250 } } }`,
  };

  it('has the bucket that sets it', () => {
    expect(linesOf(valves)).toEqual([
      '1 (0); lash bucket; about 5.410 mm; -; now; adjust valve lash, cold 1 intake',
    ]);
  });

  it('takes the chosen one of the shelf', () => {
    const stock = 'lash_buckets: [{ code: 540, thickness: 5.40, count: 2 }]\n';
    expect(linesOf({ ...valves, stock })).toEqual([
      '1 (1); lash bucket; 5.400 mm; 540; now; adjust valve lash, cold 1 intake',
    ]);
  });
});
