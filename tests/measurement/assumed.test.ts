import { describe, expect, it } from 'vitest';
import { assumedInstrument, assumptionFor } from '../../src/measurement/assumed.ts';
import { INSTRUMENT_TYPES } from '../../src/measurement/instrument.ts';
import { readingTerms } from '../../src/measurement/readingTerms.ts';
import { equals, parseDecimal, toNumber } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';

const length = (text: string, unit: string) => toBase(parseDecimal(text), unitNamed(unit));
const INCH = length('1', 'in');

describe('what is assumed of an instrument that nobody registered', () => {
  it.each([
    ['micrometer', '0.004', 'mm', 'DIN 863-1, 0 to 50 mm'],
    ['ball micrometer', '0.004', 'mm', 'DIN 863-1, 0 to 50 mm'],
    ['dial indicator', '0.015', 'mm', 'JIS B 7503, whole range of 10 mm'],
    ['caliper', '0.05', 'mm', 'DIN 862, inside and depth'],
    ['gauging strip', '0.0005', 'in', 'half a gap of 0.001 in between marks'],
    ['bore gauge', '0.006', 'mm', 'our budget: setting 4, dial 3.5, body 2 µm'],
  ] as const)('a %s is off by up to %s %s', (type, figure, unit, source) => {
    const found = assumptionFor(type, 'length', INCH);
    expect(found.source).toBe(source);
    expect('amount' in found.maxError && equals(found.maxError.amount, length(figure, unit))).toBe(true);
  });

  // DIN 863-1, error limits as printed: range to, micrometres.
  it.each([
    ['0', 4],
    ['25', 4],
    ['50', 4],
    ['50.001', 5],
    ['75', 5],
    ['100', 5],
    ['125', 6],
    ['150', 6],
    ['175', 7],
    ['200', 7],
    ['225', 8],
    ['250', 8],
    ['275', 9],
    ['300', 9],
    ['500', 13],
    ['-60', 5],
  ])('a micrometer at %s mm is off by up to %d µm', (size, micrometres) => {
    const { maxError } = assumptionFor('micrometer', 'length', length(size, 'mm'));
    expect('amount' in maxError && toNumber(maxError.amount) / 1e4).toBeCloseTo(micrometres, 12);
  });

  it('every type has a figure above zero and says where it is from', () => {
    for (const type of INSTRUMENT_TYPES) {
      const { maxError, source } = assumptionFor(type, 'length', INCH);
      const figure = 'amount' in maxError ? maxError.amount : maxError.share;
      expect(figure.n).toBeGreaterThan(0n);
      expect(source).not.toBe('');
    }
  });

  it('a wrench is off by 4 % above 10 N m, and by 6 % at or below (ISO 6789)', () => {
    const share = (newtonMetres: string) => {
      const { maxError } = assumptionFor('torque wrench', 'torque', parseDecimal(newtonMetres));
      return 'share' in maxError ? maxError.share : undefined;
    };
    expect(share('10.1')).toEqual(parseDecimal('0.04'));
    expect(share('10')).toEqual(parseDecimal('0.06'));
    expect(share('2')).toEqual(parseDecimal('0.06'));
  });

  it('its resolution is one step of the last digit written, and it is marked as assumed', () => {
    const found = assumedInstrument('a micrometer', 'micrometer', 'length', INCH, length('0.0001', 'in'));
    expect(found.assumed).toBe(true);
    expect(found.resolution).toEqual(length('0.0001', 'in'));
    expect([...readingTerms(found, { amount: INCH, id: 'here' }).keys()]).toEqual([
      'largest error of a micrometer',
      'resolution of a micrometer at here',
    ]);
  });
});
