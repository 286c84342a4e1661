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
