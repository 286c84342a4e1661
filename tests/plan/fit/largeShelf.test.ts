import { expect, it } from 'vitest';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { effort } from '../../effort.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const mm = (micrometres: number): string => (micrometres / 1000).toFixed(3);

/** Twelve cylinders and their seven mains, 40 pistons of several weights and a dozen walls of shells. All are invented. */
const FILES: Files = {
  'shop.yaml': 'kind: shop\nunits: { length: mm, mass: g }\nplan: { weight_spread: 3 g }\n',
  'stock.yaml': `kind: stock\nshells: [${Array.from(
    { length: 12 },
    (_, index) => `{ code: S${index}, fits: main shells, wall: ${mm(2465 + 2 * index)}, count: 4 }`,
  ).join(', ')}]\npistons: [${Array.from(
    { length: 40 },
    (_, index) => `{ mark: P${index}, diameter: ${mm(79_950 + index)}, weight: ${880 + (index % 7)} }`,
  ).join(', ')}]\n`,
  'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 12, mains: 7 }\n',
  'e/limits.yaml': limitsOf(
    'piston_clearance: { new: 0.020 to 0.060 }\nmain_bearing_clearance: { new: 0.030 to 0.070 }',
  ),
  'e/session.yaml': sessionOf(
    'machined',
    `- { measure: cylinder_bore, at: { ${Array.from({ length: 12 }, (_, index) => `${index + 1}: ${mm(80_000 + 2 * index)}`).join(', ')} } }
- { measure: main_housing_bore, at: { ${Array.from({ length: 7 }, (_, index) => `${index + 1}: ${mm(55_000 + 3 * index)}`).join(', ')} } }
- { measure: main_journal_diameter, at: { ${Array.from({ length: 7 }, (_, index) => `${index + 1}: ${mm(50_000 - (index % 3))}`).join(', ')} } }`,
  ),
};

it('pistons for twelve cylinders out of 40, and shells for seven mains, are chosen within a second', () => {
  const context = contextOf(FILES);
  const { pistons, shells } = fitsOf(context);
  expect(new Set(pistons?.places.map(({ piston }) => piston.mark)).size).toBe(12);
  expect(shells[0]?.places.map(({ chosen }) => chosen === undefined)).toEqual(Array(7).fill(false));
  // In pieces of work that take about a millisecond each: neither a slow machine nor what else runs on it counts.
  expect(effort(() => fitsOf(contextOf(FILES)))).toBeLessThan(1000);
});

const LENGTHS = 'kind: shop\nunits: { length: mm }\n';

/** 35 buckets from 5.060 to 5.740, two of each, and as many valves with too much lash, each a little more than the last. */
const lashOf = (cylinders: number): Files => {
  const atValves = (of: (valve: number) => string): string =>
    Array.from(
      { length: cylinders },
      (_, index) => `${index + 1}: { intake: ${of(2 * index)}, exhaust: ${of(2 * index + 1)} }`,
    ).join(', ');
  return {
    'shop.yaml': `${LENGTHS}characteristics:\n  lash_bucket_thickness: { label: lash bucket thickness, positions: valve, quantity: length }\n`,
    'stock.yaml': `kind: stock\nlash_buckets: [${Array.from(
      { length: 35 },
      (_, index) => `{ code: B${index}, thickness: ${mm(5060 + 20 * index)}, count: 2 }`,
    ).join(', ')}]\n`,
    'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { cylinders: ${cylinders}, valves: [intake, exhaust] }\n`,
    'e/limits.yaml': limitsOf('valve_lash_cold: { new: 0.190 to 0.290 }'),
    'e/session.yaml': sessionOf(
      'trial',
      `- { measure: valve_lash_cold, at: { ${atValves((valve) => mm(300 + 15 * valve))} } }
- { measure: lash_bucket_thickness, at: { ${atValves(() => '5.060')} } }`,
    ),
  };
};

/** Eleven mains that differ little, and a dozen walls of shells, each of a class of its own. */
const mainsOf = (count: number, mixing: string, table = ''): Files => ({
  'shop.yaml': LENGTHS,
  'stock.yaml': `kind: stock\nshells: [${Array.from(
    { length: 12 },
    (_, index) =>
      `{ code: S${index}, class: S${index}, fits: main shells, wall: ${mm(2465 + 2 * index)}, count: ${count} }`,
  ).join(', ')}]\n`,
  'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { mains: 11 }\n${table && STAMPS}`,
  'e/limits.yaml': limitsOf('main_bearing_clearance: { new: 0.030 to 0.070 }', `${mixing}${table}`),
  'e/session.yaml': sessionOf(
    'machined',
    `- { measure: main_housing_bore, at: { ${Array.from({ length: 11 }, (_, index) => `${index + 1}: ${mm(55_000 + index)}`).join(', ')} } }
- { measure: main_journal_diameter, at: { ${Array.from({ length: 11 }, (_, index) => `${index + 1}: 50.000`).join(', ')} } }`,
  ),
});

const atMains = (stamp: (main: number) => string): string =>
  Array.from({ length: 11 }, (_, index) => `${index + 1}: ${stamp(index)}`).join(', ');

const STAMPS = `stamps: { main_housings: { ${atMains(() => 'H')} }, main_journals: { ${atMains((main) => (main % 2 === 0 ? 'A' : 'B'))} } }\n`;

const TABLE = 'select_fit: [{ fits: main shells, table: { H: { A: S5, B: S6 } } }]\n';

const MIXED = 'mixing: [{ fits: main shells, differ_by: 0.012, thicker: lower }]\n';

it.each([
  ['lash buckets for 16 valves out of 70', lashOf(8), 0],
  ['lash buckets for 32 valves out of 70', lashOf(16), 0],
  ['shells for eleven mains, halves alike', mainsOf(4, ''), 0],
  ['shells for eleven mains, halves mixed', mainsOf(4, MIXED), 0],
  ['a dozen halves for eleven mains', mainsOf(1, MIXED), 5],
  ['shells for eleven mains by a table, halves alike', mainsOf(4, '', TABLE), 0],
  ['shells for eleven mains by a table, halves mixed', mainsOf(4, MIXED, TABLE), 0],
])('%s are chosen within a second', (_, files, without) => {
  const { shells, thicknesses } = fitsOf(contextOf(files));
  const chosen = [
    ...shells.flatMap(({ places }) => places.map((each) => each.chosen)),
    ...thicknesses.flatMap(({ places }) => places.map(({ code }) => code)),
  ];
  expect(chosen.length).toBeGreaterThan(10);
  expect(chosen.filter((each) => each === undefined)).toHaveLength(without);
  expect(effort(() => fitsOf(contextOf(files)))).toBeLessThan(1000);
});
