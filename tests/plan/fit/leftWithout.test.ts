import { expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

it('a place for which too little is left on the shelf is named, of shells and of shims', () => {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml':
      'kind: stock\nshells: [{ code: A, fits: main shells, wall: 2.475, count: 3 }]\nliner_shims: [{ code: L, thickness: 0.150, count: 1 }]\n',
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 3, mains: 2 }\n',
    'e/limits.yaml': limitsOf(
      'main_bearing_clearance: { new: 0.030 to 0.070 }\nliner_protrusion: { new: 0.010 to 0.060 }',
    ),
    'e/session.yaml': sessionOf(
      'machined',
      `- { measure: main_housing_bore, at: { 1: 55.000, 2: 55.000 } }
- { measure: main_journal_diameter, at: { 1: 50.000, 2: 50.000 } }
- { measure: liner_protrusion, at: { 1: -0.110, 2: -0.110, 3: -0.110 } }`,
    ),
  });
  const { sections } = fitPage(fitsOf(context), context, []);
  expect(sections.map(({ lines }) => lines)).toEqual([
    ['2: shells that would do are in stock, and the other places take too many of them: get more'],
    ['2, 3: what is in stock brings no more of them inside; the ideal thickness is what to get'],
  ]);
});

it('a place that others leave too few halves of its class says so, and what to do', () => {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml':
      'kind: stock\nshells: [{ code: R, class: red, fits: main shells, wall: 2.475, count: 2 }, { code: B, class: blue, fits: main shells, wall: 2.480, count: 4 }]\n',
    'e/engine.yaml':
      'kind: engine\nname: Pump\nlayout: { mains: 2 }\nstamps: { main_housings: { 1: 1, 2: 1 }, main_journals: { 1: A, 2: A } }\n',
    'e/limits.yaml': limitsOf(
      'main_bearing_clearance: { new: 0.030 to 0.070 }',
      'select_fit: [{ fits: main shells, table: { 1: { A: red } } }]\n',
    ),
    'e/session.yaml': sessionOf(
      'machined',
      `- { measure: main_housing_bore, at: { 1: 55.000, 2: 55.000 } }
- { measure: main_journal_diameter, at: { 1: 50.000, 2: 50.000 } }`,
    ),
  });
  const { sections } = fitPage(fitsOf(context), context, []);
  expect(sections.map(({ lines }) => lines)).toEqual([
    [
      '1: stamps 1 and A ask for red',
      '2: the table asks for red, and the other places take what is in stock of it: chosen by measured sizes; to follow the table get more',
    ],
  ]);
});
