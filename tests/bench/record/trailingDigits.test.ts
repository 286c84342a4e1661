import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completeDigits } from '../../../src/bench/record/trailingDigits.ts';
import { type Fraction, fraction, parseDecimal } from '../../../src/quantity/fraction.ts';
import { runs } from '../../propertyRuns.ts';

const complete = (typed: string, reference: string, decimals: number, band: string | undefined) =>
  completeDigits(typed, {
    reference: parseDecimal(reference),
    decimals,
    bandWidth: band === undefined ? undefined : parseDecimal(band),
  });

describe('the last digits of a reading', () => {
  it.each([
    ['478', '3.2480', 4, '0.0010', '3.2478'],
    ['478', '3.2500', 4, '0.0018', '3.2478'],
    ['002', '3.2498', 4, '0.0010', undefined],
    ['503', '3.2498', 4, '0.0010', '3.2503'],
    ['003', '3.9998', 4, '0.0010', '4.0003'],
    ['998', '4.0001', 4, '0.0010', '3.9998'],
    ['78', '3.2480', 4, '0.0004', '3.2478'],
    ['495', '82.500', 3, '0.020', '82.495'],
  ])('%s near %s with %i decimals and a band of %s mean %s', (typed, reference, decimals, band, meant) => {
    expect(complete(typed, reference, decimals, band)).toBe(meant);
  });

  it.each([
    ['could be several numbers within ten band widths', '78', '3.2480', 4, '0.0010'],
    ['could be none of them', '478', '3.9000', 4, '0.0010'],
    ['have no band to be judged by', '478', '3.2480', 4, undefined],
    ['have a point of their own', '.478', '3.2480', 4, '0.0010'],
    ['are a whole number where no decimals are read', '320', '310', 0, '10'],
    ['are as many as a whole number has', '3248', '3.2480', 3, '0.0010'],
  ])('that %s are not guessed', (_, typed, reference, decimals, band) => {
    expect(complete(typed, reference, decimals, band)).toBeUndefined();
  });

  it('of any reading within ten band widths never come back as another one', () => {
    const amounts = fc.record({
      reference: fc.integer({ min: 20_000, max: 60_000 }),
      band: fc.integer({ min: 1, max: 60 }),
      tenths: fc.integer({ min: -10, max: 10 }),
      digits: fc.integer({ min: 1, max: 3 }),
    });
    const inUnits = (units: number): Fraction => fraction(units, 10_000);
    fc.assert(
      fc.property(amounts, ({ reference, band, tenths, digits }) => {
        const meant = reference + band * tenths;
        const typed = String(meant % 10 ** digits).padStart(digits, '0');
        const expected = { reference: inUnits(reference), decimals: 4, bandWidth: inUnits(band) };
        const found = completeDigits(typed, expected);
        if (found !== undefined) expect(found).toBe((meant / 10_000).toFixed(4));
      }),
      runs(20_000),
    );
  });
});
