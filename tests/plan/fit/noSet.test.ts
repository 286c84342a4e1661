import { expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const piston = (mark: string, diameter: string, more = ''): string =>
  `{ mark: ${mark}, diameter: ${diameter}${more} }`;

/** What is said of pistons where four bores of 80.010 mm have none: a set is whole or not at all. */
function linesFor(pistons: readonly string[], fourth = '80.010', machined = ''): readonly string[] {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm, mass: g }\nplan: { weight_spread: 3 g }\n',
    'stock.yaml': `kind: stock\npistons: [${pistons.join(', ')}]\n`,
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 4 }\n',
    'e/limits.yaml': limitsOf('piston_clearance: { new: 0.030 to 0.070 }'),
    'e/session.yaml': sessionOf(
      'machined',
      `- { measure: cylinder_bore, at: { 1: 80.010, 2: 80.010, 3: 80.010, 4: ${fourth} } }`,
      machined,
    ),
  });
  return fitPage(fitsOf(context), context, []).sections[0]?.lines ?? [];
}

const THREE = ['A', 'B', 'C'].map((mark) => piston(mark, '79.960', ', weight: 400'));

const WHOLE = 'a set is chosen whole or not at all: none is, until each cylinder has its own';

it.each([
  [
    'of which the shelf has one too few',
    THREE,
    '80.010',
    '',
    ['std: 4 are needed, 3 are in stock: get 1 more'],
  ],
  [
    'of two sizes, of each of which it has too few',
    [piston('A', '79.960'), piston('B', '79.960')],
    '80.260',
    'machined: [{ part: cylinder 4, size: 0.25 over }]\n',
    ['std: 3 are needed, 2 are in stock: get 1 more', '0.25 over: 1 is needed, none is in stock: get 1 more'],
  ],
  [
    'one of which fits no bore that is left',
    [...THREE, piston('D', '79.960', ', weight: 400')],
    '80.060',
    '',
    ['4: none that is left in stock brings it inside: get one of 80.010 mm'],
  ],
  [
    'one of which has another weight',
    [...THREE, piston('D', '79.960', ', weight: 410')],
    '80.010',
    '',
    [
      'by size each cylinder has its own, and their weights differ by more than 3.0 g: get some of one weight',
    ],
  ],
  [
    'that several bores would need',
    [...THREE.slice(0, 2), piston('C', '79.900', ', weight: 400'), piston('D', '79.900', ', weight: 400')],
    '80.010',
    '',
    [
      '3: none that is left in stock brings it inside: get one of 79.960 mm',
      '4: none that is left in stock brings it inside: get one of 79.960 mm',
    ],
  ],
])('pistons %s are none, and the page says why and what to get', (_, pistons, fourth, machined, lines) => {
  expect(linesFor(pistons, fourth, machined)).toEqual([...lines, WHOLE]);
});
