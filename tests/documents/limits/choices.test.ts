import { expect, it } from 'vitest';
import { type Fraction, toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { ENGINE, refusalsOf, shopOf } from '../../shopOf.ts';

/** Of an invented maker: what a limits document may say of how parts are chosen. */
const files = {
  'e/engine.yaml': ENGINE,
  'e/l.yaml': `kind: limits
source: Invented for this test.
limits: { main_bearing_clearance: { new: 0.0020 to 0.0038 } }
select_fit:
  - fits: main shells
    table: { A: { 1: red, 2: blue }, B: { 1: blue, 2: { upper: green, lower: blue } } }
    housings: { A: 3.5000 to 3.5004, B: 3.5004 to 3.5008 }
    journals: { 1: 76.20 to 76.21 mm }
mixing:
  - { fits: main shells, differ_by: 0.0005, thicker: lower }
  - { fits: rod shells, differ_by: 0.0127 mm, thicker: upper }
gasket_choice:
  - { code: A, protrusion: 0.705 to 0.755 mm, thickness: 1.45 mm }
  - { code: B, protrusion: 0.755 mm to 0.8 mm }
`,
};

const inches = (amount: Fraction | undefined): string | undefined =>
  amount && toDecimal(fromBase(amount, unitNamed('in')), 4);
const range = ({ least, greatest }: { readonly least: Fraction; readonly greatest: Fraction }) =>
  `${inches(least)} to ${inches(greatest)}`;
const both = (name: string) => ({ upper: name, lower: name });
const rangesOf = (all: ReadonlyMap<string, Parameters<typeof range>[0]>) =>
  Object.fromEntries([...all].map(([name, each]) => [name, range(each)]));

it('shells by their stamps, halves that may run together and gaskets by protrusion are read as written', () => {
  expect(refusalsOf(files)).toEqual([]);
  const [limits] = shopOf(files).engine?.limits ?? [];
  const { selectFits = [], mixings = [], gaskets = [] } = limits?.choices ?? {};
  expect(selectFits.map(({ part }) => part.id)).toEqual(['main_shell']);
  const [fit] = selectFits;
  expect([...(fit?.table ?? [])].map(([name, row]) => [name, Object.fromEntries(row)])).toEqual([
    ['A', { 1: both('red'), 2: both('blue') }],
    ['B', { 1: both('blue'), 2: { upper: 'green', lower: 'blue' } }],
  ]);
  expect(rangesOf(fit?.housings ?? new Map())).toEqual({ A: '3.5000 to 3.5004', B: '3.5004 to 3.5008' });
  expect(rangesOf(fit?.journals ?? new Map())).toEqual({ 1: '3.0000 to 3.0004' });
  expect(mixings.map(({ part, differBy, thicker }) => [part.id, inches(differBy), thicker])).toEqual([
    ['main_shell', '0.0005', 'lower'],
    ['rod_shell', '0.0005', 'upper'],
  ]);
  expect(
    gaskets.map(({ code, protrusion, thickness }) => [code, range(protrusion), inches(thickness)]),
  ).toEqual([
    ['A', '0.0278 to 0.0297', '0.0571'],
    ['B', '0.0297 to 0.0315', undefined],
  ]);
});
