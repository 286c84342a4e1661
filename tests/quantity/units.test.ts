import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equals, fraction, parseDecimal, toDecimal, toNumber } from '../../src/quantity/fraction.ts';
import {
  findUnit,
  fromBase,
  QUANTITIES,
  toBase,
  UNIT_SPELLINGS,
  UNITS,
  unitNamed,
  unitsOf,
} from '../../src/quantity/units.ts';
import { runs } from '../propertyRuns.ts';

/** One of a unit in another of the same quantity, to so many decimals. */
const inUnit = (from: string, to: string, decimals: number): string =>
  toDecimal(fromBase(toBase(fraction(1), unitNamed(from)), unitNamed(to)), decimals);

it.each(UNITS.filter(({ name }) => name === '').map((unit) => [unit.quantity, unit] as const))(
  'a %s has no unit, and is what is written',
  (_, unit) => expect(toBase(parseDecimal('2.5'), unit)).toEqual(parseDecimal('2.5')),
);

describe('factors of NIST SP 811, B.8, to the digits that it prints', () => {
  it.each([
    ['lbf ft', 'N m', '1.355818', 'seen; rounded to 7 digits'],
    ['lbf ft', 'N m', '1.3558179483314004', 'computed: 4.4482216152605 × 0.3048, exact'],
    ['lbf in', 'N m', '0.1129848', 'seen; rounded to 7 digits'],
    ['lbf in', 'N m', '0.1129848290276167', 'computed, exact'],
    ['ozf in', 'N m', '0.007061552', 'seen'],
    ['ozf in', 'N m', '0.007061551814', 'computed'],
    ['kgf m', 'N m', '9.80665', 'seen, exact'],
    ['lbf', 'N', '4.4482216152605', 'seen, exact'],
    ['in', 'mm', '25.4', 'seen, exact'],
    ['psi', 'kPa', '6.894757', 'seen: 6 894.757 Pa'],
    ['lbf/in', 'N/mm', '0.1751268', 'seen: 175.1268 N/m'],
    ['psi', 'kPa', '6.894757293168', 'computed'],
    ['in3', 'cc', '16.387064', 'seen, exact'],
    ['lb', 'g', '453.59237', 'exact, from memory'],
    ['kgf/cm2', 'kPa', '98.0665', 'exact, from memory'],
    ['inH2O', 'kPa', '0.2490889', '249.0889 Pa, conventional, from memory'],
    ['inHg', 'kPa', '3.386389', '3 386.389 Pa, conventional, from memory'],
    ['kgf m', 'lbf ft', '7.2330139', 'computed'],
  ])('1 %s is %s: %s (%s)', (from, to, printed, _mark) => {
    const decimals = printed.length - printed.indexOf('.') - 1;
    expect(inUnit(from, to, decimals)).toBe(printed);
  });

  it.each([
    ['in', 'mm', '25.4'],
    ['lbf', 'N', '4.4482216152605'],
    ['kgf m', 'N m', '9.80665'],
    ['in3', 'cc', '16.387064'],
    ['lbf ft', 'N m', '1.3558179483314004'],
  ])('those said to be exact have nothing behind their last digit: %s in %s', (from, to, exact) => {
    expect(equals(fromBase(unitNamed(from).factor, unitNamed(to)), parseDecimal(exact))).toBe(true);
  });
});

describe('units that follow from one another (common practice, no source)', () => {
  it.each([
    ['in', 'thou', '1000'],
    ['mm', 'um', '1000'],
    ['lbf ft', 'lbf in', '12'],
    ['lbf in', 'ozf in', '16'],
    ['kN', 'N', '1000'],
    ['bar', 'kPa', '100'],
    ['cc', 'ml', '1'],
    ['kg', 'g', '1000'],
    ['lb', 'oz', '16'],
    ['L', 'cc', '1000'],
    ['cSt', 'mm2/s', '1'],
  ])('1 %s is exactly so many %s: %s', (from, to, expected) => {
    expect(equals(fromBase(unitNamed(from).factor, unitNamed(to)), parseDecimal(expected))).toBe(true);
  });

  it('an ounce is a sixteenth of the pound of 453.59237 g', () => {
    expect(inUnit('oz', 'g', 9)).toBe('28.349523125');
  });

  it('a temperature has a zero of its own, and nothing else has', () => {
    expect(unitNamed('in')).toStrictEqual({ name: 'in', quantity: 'length', factor: fraction(254_000_000) });
    const celsius = (text: string) => toNumber(toBase(parseDecimal(text), unitNamed('degF')));
    expect(celsius('32')).toBe(0);
    expect(celsius('212')).toBe(100);
    expect(celsius('68')).toBe(20);
    expect(celsius('-40')).toBe(-40);
  });

  it('a length of one base step is a tenth of a nanometre', () => {
    expect(equals(toBase(parseDecimal('0.0000001'), unitNamed('mm')), fraction(1))).toBe(true);
    expect(equals(toBase(parseDecimal('0.000001'), unitNamed('in')), fraction(254))).toBe(true);
  });
});

describe('the table of units', () => {
  it('gives each quantity its units, the first of an inch shop first', () => {
    expect(
      Object.fromEntries(QUANTITIES.map((each) => [each, unitsOf(each).map(({ name }) => name)])),
    ).toEqual({
      length: ['in', 'thou', 'mm', 'um'],
      torque: ['lbf ft', 'lbf in', 'ozf in', 'N m', 'kgf m'],
      force: ['lbf', 'N', 'kN'],
      'spring rate': ['lbf/in', 'N/mm'],
      pressure: ['psi', 'kPa', 'bar', 'kgf/cm2', 'inH2O', 'inHg'],
      volume: ['cc', 'ml', 'L', 'in3'],
      mass: ['g', 'kg', 'oz', 'lb'],
      angle: ['deg'],
      temperature: ['degC', 'degF'],
      time: ['h'],
      speed: ['rpm'],
      roughness: ['um', 'uin'],
      viscosity: ['cSt', 'mm2/s'],
      flow: ['L/min', 'gal/min'],
      percent: ['%'],
      number: [''],
      count: [''],
      'pass or fail': [''],
    });
  });

  it('holds no name twice for a quantity, and only factors above zero', () => {
    expect(new Set(UNITS.map(({ name, quantity }) => `${name} ${quantity}`)).size).toBe(UNITS.length);
    expect(UNITS.filter(({ factor }) => factor.n <= 0n || factor.d <= 0n)).toEqual([]);
  });

  it.each([
    ['ft-lb', 'lbf ft'],
    ['lb-ft', 'lbf ft'],
    ['in-lb', 'lbf in'],
    ['lb-in', 'lbf in'],
    ['Nm', 'N m'],
  ])('takes the spelling %s for %s', (spelling, name) => {
    expect(findUnit(spelling)).toBe(unitNamed(name));
    expect(UNIT_SPELLINGS).toContain(spelling);
  });

  it('tells a micrometre of roughness from one of length by what is wanted', () => {
    const roughness = findUnit('um', 'roughness');
    expect(roughness?.quantity).toBe('roughness');
    expect(findUnit('um')?.quantity).toBe('length');
    expect(findUnit('um', 'length')).toBe(unitNamed('um'));
    expect(findUnit('um', 'torque')?.quantity).toBe('length');
    // A microinch is a millionth of an inch of 25.4 mm: 0.0254 micrometres.
    const microinch = findUnit('uin', 'roughness');
    if (roughness === undefined || microinch === undefined) throw new Error('no unit of roughness');
    expect(equals(fromBase(microinch.factor, roughness), parseDecimal('0.0254'))).toBe(true);
  });

  it('has no word for the unit of plain numbers, counts and tests', () => {
    for (const quantity of ['number', 'count', 'pass or fail'] as const) {
      expect(unitsOf(quantity).map(({ name }) => name)).toEqual(['']);
    }
    expect(UNIT_SPELLINGS).not.toContain('');
    expect(findUnit('')).toBeUndefined();
  });

  it('knows nothing else', () => {
    expect(findUnit('furlong')).toBeUndefined();
    expect(findUnit('IN')).toBeUndefined();
    expect(() => unitNamed('furlong')).toThrow(new RangeError('no unit is named furlong'));
  });

  it('turns an amount there and back without loss, in every unit', () => {
    const amounts = fc.tuple(
      fc.bigInt({ min: -(10n ** 9n), max: 10n ** 9n }),
      fc.integer({ min: 0, max: 6 }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...UNITS), amounts, (unit, [n, places]) => {
        const value = fraction(n, 10n ** BigInt(places));
        expect(equals(fromBase(toBase(value, unit), unit), value)).toBe(true);
      }),
      runs(1000),
    );
  });
});
