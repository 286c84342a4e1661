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
    ['inside micrometer', '0.008', 'mm', 'our judgement, no source'],
    ['depth micrometer', '0.008', 'mm', 'our judgement, no source'],
    ['feeler gauge', '0.01', 'mm', 'our judgement, no source'],
    ['setting master', '0.002', 'mm', 'our judgement, no source'],
    ['radius gauge', '0.1', 'mm', 'our judgement, no source'],
    ['height gauge', '0.02', 'mm', 'our judgement, no source'],
  ] as const)('a %s is off by up to %s %s', (type, figure, unit, source) => {
    const found = assumptionFor(type, 'length', INCH);
    expect(found.source).toBe(source);
    expect('amount' in found.maxError && equals(found.maxError.amount, length(figure, unit))).toBe(true);
  });

  it.each([
    ['balance', 'mass', { amount: 1 }, 'our judgement, no source: 1 g'],
    ['protractor', 'angle', { amount: 1 }, 'our judgement, no source: 1 degree'],
    ['burette', 'volume', { amount: 0.2 }, 'our judgement, no source: 0.2 cc'],
    ['roughness tester', 'roughness', { share: 0.1 }, 'our judgement, no source'],
    ['spring scale', 'force', { share: 0.05 }, 'our judgement, no source'],
    ['pressure gauge', 'pressure', { share: 0.03 }, 'our judgement, no source'],
    ['torque wrench', 'torque', { share: 0.04 }, 'ISO 6789, setting tools'],
    ['thermometer', 'temperature', { share: 0.02 }, 'our judgement, no source'],
    ['micrometer', 'force', { share: 0.02 }, 'our judgement, no source'],
    ['other', 'viscosity', { share: 0.02 }, 'our judgement, no source'],
  ] as const)('a %s that reads %s is off by up to %o', (type, quantity, figure, source) => {
    const { maxError, ...found } = assumptionFor(type, quantity, parseDecimal('50'));
    expect(found.source).toBe(source);
    expect(Object.fromEntries(Object.entries(maxError).map(([key, each]) => [key, toNumber(each)]))).toEqual(
      figure,
    );
  });

  it('says of what range of micrometers the standard has its figure', () => {
    expect(assumptionFor('micrometer', 'length', length('75', 'mm')).source).toBe('DIN 863-1, 50 to 100 mm');
    expect(assumptionFor('micrometer', 'length', length('101', 'mm')).source).toBe(
      'DIN 863-1, 100 to 150 mm',
    );
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
    expect(found).toEqual({
      id: 'a micrometer',
      type: 'micrometer',
      ...assumptionFor('micrometer', 'length', INCH),
      resolution: length('0.0001', 'in'),
      assumed: true,
    });
    expect([...readingTerms(found, { amount: INCH, id: 'here' }).keys()]).toEqual([
      'largest error of a micrometer',
      'resolution of a micrometer at here',
    ]);
  });

  it.each([
    ['a whole inch is no step of a scale', 'length', '1', '25.4 mm', '0.05 mm'],
    ['nor is the zero of one', 'length', '0', '25.4 mm', '0.05 mm'],
    ['a finer step stays', 'length', '1', '0.02 mm', '0.02 mm'],
    ['a zero is read to 1 N m', 'torque', '0', '10 N m', '1 N m'],
    ['a tightening to its last digit', 'torque', '50', '10 N m', '10 N m'],
    ['of a weight to its last digit', 'mass', '0', '100 g', '100 g'],
  ] as const)('%s', (_, quantity, amount, written, expected) => {
    const amountOf = (text: string) => length(...(text.split(/ (.*)/) as [string, string]));
    const of = assumedInstrument('x', 'other', quantity, parseDecimal(amount), amountOf(written));
    expect(of.resolution && equals(of.resolution, amountOf(expected))).toBe(true);
  });
});
