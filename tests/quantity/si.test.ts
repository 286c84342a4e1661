import { expect, it } from 'vitest';
import { parseDecimal } from '../../src/quantity/fraction.ts';
import { inSi, siName } from '../../src/quantity/si.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';

// NIST SP 811, B.8: exact factors as printed, the others to the seven digits that are.
it.each([
  ['1', 'in', 0.0254, 'm'],
  ['0.06275', 'mm', 0.00006275, 'm'],
  ['1', 'lbf ft', 1.355818, 'N m'],
  ['1', 'psi', 6894.757, 'Pa'],
  ['1', 'lbf/in', 175.1268, 'N/m'],
  ['1', 'in3', 1.638706e-5, 'm3'],
  ['1', 'oz', 0.02834952, 'kg'],
  ['180', 'deg', Math.PI, 'rad'],
  ['212', 'degF', 373.15, 'K'],
  ['1', 'h', 3600, 's'],
  ['60', 'rpm', 1, '1/s'],
  ['1', 'uin', 2.54e-8, 'm'],
  ['1', 'cSt', 1e-6, 'm2/s'],
  ['1', 'gal/min', 6.30902e-5, 'm3/s'],
  ['1', 'lbf', 4.448222, 'N'],
  ['50', '%', 0.5, ''],
  ['20', 'degC', 293.15, 'K'],
  ['60', 'L/min', 0.001, 'm3/s'],
])('%s %s is %f %s', (number, unitName, wanted, si) => {
  const unit = unitNamed(unitName);
  const found = inSi(toBase(parseDecimal(number), unit), unit.quantity);
  expect(found / wanted).toBeCloseTo(1, 6);
  expect(siName(unit.quantity)).toBe(si);
});

it('what is exact is rounded but once', () => {
  expect(inSi(toBase(parseDecimal('0.06275'), unitNamed('mm')), 'length')).toBe(0.00006275);
});

it.each(['number', 'count', 'pass or fail'] as const)(
  'a %s stands in the SI as it is, without a unit',
  (quantity) => {
    expect([inSi(parseDecimal('9.1'), quantity), siName(quantity)]).toEqual([9.1, '']);
  },
);
