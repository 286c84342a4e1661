import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalsFor,
  formatAmount,
  formatDistance,
  formatNumber,
  formatUncertainty,
  headedWithUnit,
  withUnitName,
} from '../../src/quantity/format.ts';
import { equals, fraction, parseDecimal } from '../../src/quantity/fraction.ts';
import { toBase, UNITS, unitNamed, unitsOf } from '../../src/quantity/units.ts';
import { runs } from '../propertyRuns.ts';

const amountOf = (text: string, unit: string) => toBase(parseDecimal(text), unitNamed(unit));

it('a unit stands behind a number and a heading, and nothing where there is none', () => {
  const [plain] = unitsOf('number');
  if (plain === undefined) throw new Error('no unit for plain numbers');
  expect([withUnitName('2.5', unitNamed('in')), withUnitName('9.1', plain)]).toEqual(['2.5 in', '9.1']);
  expect(headedWithUnit('bore', unitNamed('mm'))).toBe('bore, mm');
  expect(headedWithUnit('compression ratio', plain)).toBe('compression ratio');
});

describe('how many decimals show one step', () => {
  it.each([
    ['0.0001', 'in', 'in', 4],
    ['0.00005', 'in', 'in', 5],
    ['0.00009', 'in', 'in', 5],
    ['0.001', 'mm', 'mm', 3],
    ['0.01', 'mm', 'in', 4],
    ['0.0001', 'in', 'mm', 3],
    ['1', 'lbf in', 'lbf in', 0],
    ['10', 'psi', 'psi', 0],
    ['0.0000001', 'mm', 'in', 9],
    ['0.00000000001', 'mm', 'mm', 9],
    ['1', 'in', 'in', 0],
    ['0.9', 'in', 'in', 1],
    ['0', 'in', 'in', 0],
  ])('a step of %s %s shows in %s with %i', (step, of, shown, expected) =>
    expect(decimalsFor(amountOf(step, of), unitNamed(shown))).toBe(expected),
  );
});

describe('an amount as printed', () => {
  it('keeps the zeros that were written', () => {
    expect(formatAmount(amountOf('0.0020', 'in'), unitNamed('in'), 4)).toBe('0.0020 in');
    expect(formatNumber(amountOf('0.0635', 'mm'), unitNamed('in'), 4)).toBe('0.0025');
    expect(formatAmount(amountOf('64', 'degF'), unitNamed('degF'), 0)).toBe('64 degF');
  });

  it('is read back as the same amount, in every unit', () => {
    const text = fc
      .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 5 }))
      .map(([n, places]) => ({ value: fraction(n, 10n ** BigInt(places)), places }));
    fc.assert(
      fc.property(fc.constantFrom(...UNITS), text, (unit, { value, places }) => {
        const printed = formatNumber(toBase(value, unit), unit, places);
        expect(equals(parseDecimal(printed), value)).toBe(true);
      }),
      runs(1000),
    );
  });
});

describe('a distance past a limit, as said at the bench', () => {
  it.each([
    ['0.0007', 'in', 'in', 4, '7 tenths'],
    ['0.0001', 'in', 'in', 4, '1 tenth'],
    ['0.00005', 'in', 'in', 5, '0.5 tenth'],
    ['0.001', 'in', 'in', 4, '1 thou'],
    ['0.0012', 'in', 'in', 4, '1.2 thou'],
    ['0.000999', 'in', 'in', 6, '10 tenths'],
    ['0.00011', 'in', 'in', 5, '1.1 tenths'],
    ['0.000737', 'in', 'in', 6, '7.4 tenths'],
    ['0.0000012', 'in', 'in', 7, '0.01 tenth'],
    ['0.012345', 'in', 'in', 6, '12.35 thou'],
    ['0.25', 'in', 'in', 3, '250 thou'],
    ['0.2500001', 'in', 'in', 3, '0.250 in'],
    ['0.010', 'in', 'in', 4, '10 thou'],
    ['-0.0007', 'in', 'in', 4, '7 tenths'],
    ['0.26', 'in', 'in', 3, '0.260 in'],
    ['0.02', 'mm', 'mm', 2, '0.02 mm'],
    ['2', 'lbf in', 'lbf in', 0, '2 lbf in'],
  ])('%s %s', (text, of, shown, decimals, expected) =>
    expect(formatDistance(amountOf(text, of), unitNamed(shown), decimals)).toBe(expected),
  );
});

describe('an uncertainty as printed, with two digits that count', () => {
  it.each([
    ['0.00012345', 'in', '0.00012'],
    ['0.0034', 'mm', '0.0034'],
    ['0.0996', 'mm', '0.100'],
    ['1.26', 'lbf in', '1.3'],
    ['12.3', 'lbf in', '12'],
    ['123.4', 'lbf in', '123'],
    ['0.00000000012', 'mm', '0.000000000'],
    ['0', 'in', '0'],
  ])('%s %s is %s', (text, unit, expected) => {
    const factor = Number(unitNamed(unit).factor.n) / Number(unitNamed(unit).factor.d);
    expect(formatUncertainty(Number(text) * factor, unitNamed(unit))).toBe(expected);
  });
});

describe('a distance that the decimals of the reading cannot show', () => {
  it.each([
    ['0.03', 'lbf ft', 1, '0.03 lbf ft'],
    ['0.04', 'lbf ft', 1, '0.04 lbf ft'],
    ['0.05', 'lbf ft', 1, '0.1 lbf ft'],
    ['0.00000000001', 'mm', 2, '0.000000000 mm'],
    ['1.5', 'psi', 1, '1.5 psi'],
    ['0.0004', 'mm', 2, '0.0004 mm'],
    ['0', 'mm', 2, '0.00 mm'],
  ])('%s %s with %i decimals is %s', (size, unit, decimals, expected) =>
    expect(formatDistance(amountOf(size, unit), unitNamed(unit), decimals)).toBe(expected),
  );
});
