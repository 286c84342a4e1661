import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/diagnostic/diagnostic.ts';
import { startOfFile } from '../../src/diagnostic/place.ts';
import { type Amount, type DocumentContext, isPlainNumber, parseAmount } from '../../src/documents/amount.ts';
import { formatNumber, withUnitName } from '../../src/quantity/format.ts';
import { equals, fraction } from '../../src/quantity/fraction.ts';
import { type Quantity, UNITS, type Unit, unitNamed } from '../../src/quantity/units.ts';
import { runs } from '../propertyRuns.ts';

const span = { start: 0, end: 0 };

function read(text: string, quantity: Quantity, units: readonly string[] = ['in', 'lbf ft']) {
  const problems: Diagnostic[] = [];
  const context: DocumentContext = {
    source: { path: 'e.yaml', text: '', place: () => startOfFile('e.yaml') },
    units: new Map(units.map(unitNamed).map((unit): [Quantity, Unit] => [unit.quantity, unit])),
    problems,
  };
  const amount = parseAmount(text, span, quantity, context);
  return { amount, codes: problems.map(({ code }) => code) };
}

const sizeOf = (amount: Amount | undefined) => amount && `${amount.amount.n}/${amount.amount.d}`;

describe('a number in a document', () => {
  it.each([
    ['3.2478', 'length', '824941200/1', '3.2478'],
    ['0.0025', 'length', '635000/1', '0.0025'],
    ['.0025', 'length', '635000/1', '.0025'],
    ['+7', 'length', '1778000000/1', '+7'],
    ['-0.5', 'length', '-127000000/1', '-0.5'],
    ['0.0635 mm', 'length', '635000/1', '0.0635 mm'],
    ['0.0635mm', 'length', '635000/1', '0.0635 mm'],
    ['2.5 thou', 'length', '635000/1', '2.5 thou'],
    ['63.5 um', 'length', '635000/1', '63.5 um'],
    ['300 psi', 'pressure', undefined, '300 psi'],
    ['64 degF', 'temperature', undefined, '64 degF'],
    ['11840', 'time', '11840/1', '11840'],
  ] as const)('%s is a %s', (text, quantity, size, written) => {
    const { amount, codes } = read(text, quantity);
    expect(codes).toEqual([]);
    if (size !== undefined) expect(sizeOf(amount)).toBe(size);
    expect(amount?.written).toBe(written);
  });

  it.each([
    ['70 ft-lb', '70 lbf ft'],
    ['70 lb-ft', '70 lbf ft'],
    ['18 in-lb', '18 lbf in'],
    ['18 lb-in', '18 lbf in'],
    ['95 Nm', '95 N m'],
    ['95Nm', '95 N m'],
  ])('%s is printed in the standard form, %s', (text, written) =>
    expect(read(text, 'torque').amount?.written).toBe(written),
  );

  it.each([
    ['3.2478', '25400'],
    ['3.24780', '2540'],
    ['3', '254000000'],
    ['82.49 mm', '100000'],
  ])('%s keeps the step of its last digit', (text, step) => {
    const found = read(text, 'length').amount?.lastDigit;
    expect(found && equals(found, fraction(BigInt(step)))).toBe(true);
  });

  it.each([
    ['5 psi', 'length', 'document/wrong-quantity'],
    ['5 lbf', 'torque', 'document/wrong-quantity'],
    ['5', 'pressure', 'document/no-unit'],
    ['3.00000001', 'length', 'document/too-fine'],
    ['0.00000001 mm', 'length', 'document/too-fine'],
  ] as const)('%s as a %s is refused: %s', (text, quantity, code) => {
    const { amount, codes } = read(text, quantity);
    expect(amount).toBeUndefined();
    expect(codes).toEqual([code]);
  });

  it('without a unit anywhere is refused, never guessed', () => {
    expect(read('3.2', 'length', []).codes).toEqual(['document/no-unit']);
    expect(read('18', 'torque', ['in']).codes).toEqual(['document/no-unit']);
  });

  it('a tenth of a nanometre is the finest that is kept', () => {
    expect(sizeOf(read('0.0000001 mm', 'length').amount)).toBe('1/1');
    expect(sizeOf(read('0.000001', 'length').amount)).toBe('254/1');
  });

  it('is told from text', () => {
    expect(['3', '-3', '+.5', '05'].filter(isPlainNumber)).toHaveLength(4);
    expect(['3.', '3e2', '3 in', '', '0x1F', '1_000', '.'].filter(isPlainNumber)).toEqual([]);
  });
});

describe('an amount that is printed', () => {
  it('is read back as the same amount, with as many digits, in every unit', () => {
    const figures = fc.tuple(fc.integer({ min: -9_999_999, max: 9_999_999 }), fc.integer({ min: 0, max: 4 }));
    fc.assert(
      fc.property(fc.constantFrom(...UNITS), figures, (unit, [digits, places]) => {
        const text = formatNumber(
          { n: unit.factor.n * BigInt(digits), d: unit.factor.d * 10n ** BigInt(places) },
          { ...unit, zero: fraction(0) },
          places,
        );
        const first = read(withUnitName(text, unit), unit.quantity, []);
        if (first.codes.includes('document/too-fine')) return;
        const printed = first.amount && formatNumber(first.amount.amount, unit, places);
        expect(printed).toBe(text.replace(/^-(0(?:\.0+)?)$/, '$1'));
        const again = read(withUnitName(`${printed}`, unit), unit.quantity, []).amount;
        expect(again && first.amount && equals(again.amount, first.amount.amount)).toBe(true);
        expect(again?.lastDigit && first.amount && equals(again.lastDigit, first.amount.lastDigit)).toBe(
          true,
        );
      }),
      runs(2000),
    );
  });
});
