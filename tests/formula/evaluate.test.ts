import { expect, it } from 'vitest';
import { evaluateFormula } from '../../src/formula/evaluate.ts';
import { equals, type Fraction, fraction } from '../../src/quantity/fraction.ts';
import { parsed, work } from './parsed.ts';

const SIZES = { bore: '4.1250', stroke: '5', wear: '-0.0003', nothing: '0' };

/** Worked by hand: the formula, and the result as numerator over denominator in lowest terms. */
const RESULTS: readonly (readonly [string, bigint, bigint])[] = [
  ['0', 0n, 1n],
  ['.5', 1n, 2n],
  ['0.0020', 1n, 500n],
  ['0.1 + 0.2', 3n, 10n],
  ['0.3 - 0.1 - 0.2', 0n, 1n],
  ['1 - (2 - 3)', 2n, 1n],
  ['2 + 3 * 4', 14n, 1n],
  ['(2 + 3) * 4', 20n, 1n],
  ['12 / 4 / 3', 1n, 1n],
  ['12 / (4 / 3)', 9n, 1n],
  ['12 / 4 * 3', 9n, 1n],
  ['1 / 3 + 1 / 3 + 1 / 3', 1n, 1n],
  ['-2 * 3', -6n, 1n],
  ['2 * -3', -6n, 1n],
  ['2 - -3', 5n, 1n],
  ['--2', 2n, 1n],
  ['-(1 + 2)', -3n, 1n],
  ['6 / -4', -3n, 2n],
  ['bore', 33n, 8n],
  ['0.0005 * bore', 33n, 16000n],
  ['bore + 0.001', 2063n, 500n],
  ['bore * bore', 1089n, 64n],
  ['stroke / bore', 40n, 33n],
  ['abs(wear)', 3n, 10000n],
  ['abs(bore - stroke)', 7n, 8n],
  ['min(bore, stroke)', 33n, 8n],
  ['max(bore, stroke)', 5n, 1n],
  ['mean(1, 2, 4)', 7n, 3n],
  ['spread(1, 4, 2)', 3n, 1n],
  ['spread(wear, wear)', 0n, 1n],
  ['max(1, 4, 2, 3)', 4n, 1n],
  ['min(1 / 3, 0.3333)', 3333n, 10000n],
  ['sqrt(0)', 0n, 1n],
  ['sqrt(16)', 4n, 1n],
  ['sqrt(0.0625)', 1n, 4n],
  ['sqrt(2 * 8) / sqrt(4 / 9)', 6n, 1n],
  ['sqrt(bore * bore)', 33n, 8n],
  ['round(2.4)', 2n, 1n],
  ['round(2.5)', 3n, 1n],
  ['round(-2.5)', -3n, 1n],
  ['round(bore / 3, 2)', 69n, 50n],
  ['round(bore, 2)', 413n, 100n],
  ['round(0.00125, 4)', 13n, 10000n],
  ['round(-0.00125, 4)', -13n, 10000n],
  ['round(bore, 0)', 4n, 1n],
  ['round(1 / 3, 15)', 333333333333333n, 1000000000000000n],
];

it.each(RESULTS)('%s is worked out as by hand', (text, n, d) => {
  expect(work(text, SIZES)).toEqual({ n, d });
});

it('a formula that lands on the limit is exactly on it, where a double would be beside it', () => {
  expect(0.1 + 0.2 === 0.3).toBe(false);
  const result = work('0.1 + 0.2');
  expect('n' in result && equals(result, fraction(3, 10))).toBe(true);
});

const ROOT_HELP = 'turn the difference round, or use abs(x)';

const REFUSED: readonly (readonly [string, string, string, string?])[] = [
  ['1 / 0', 'this divides by zero', '0', 'divide by something that cannot come to zero'],
  ['1 / (bore - 4.125)', 'this divides by zero', '(bore - 4.125)'],
  ['0 / nothing', 'this divides by zero', 'nothing'],
  [
    '2 + sqrt(bore - 5)',
    'this takes the square root of a negative number, -0.875',
    'sqrt(bore - 5)',
    ROOT_HELP,
  ],
  ['sqrt(-100)', 'this takes the square root of a negative number, -100', 'sqrt(-100)', ROOT_HELP],
  ['sqrt(-1 / 3)', 'this takes the square root of a negative number, -0.333333333333', 'sqrt(-1 / 3)'],
  ['sqrt(wear)', 'this takes the square root of a negative number, -0.0003', 'sqrt(wear)'],
  ['2 * bor', 'there is no value for bor', 'bor'],
  ['abs(-pi)', 'there is no value for pi', 'pi'],
  ['max(1, e)', 'there is no value for e', 'e'],
  ['i * (1 / 0)', 'there is no value for i', 'i'],
  ['constructor', 'there is no value for constructor', 'constructor'],
];

const refused = REFUSED.map(([text, message, where, help]) => ({ text, message, where, help }));

it.each(refused)('$text is refused where it goes wrong', ({ text, message, where, help }) => {
  const start = text.lastIndexOf(where);
  const found = work(text, SIZES);
  expect(found).toMatchObject({ message, start, end: start + where.length });
  if (help !== undefined) expect(found).toHaveProperty('help', help);
});

it('a name that is nearly right is named', () => {
  expect(work('2 * bor', SIZES)).toMatchObject({ help: 'did you mean bore?' });
});

it('a quotient that is not zero is never taken for a division by zero', () => {
  expect(work('1 / (sqrt(2) * sqrt(2) - 2 + 1)')).not.toHaveProperty('message');
});

/** Each side of the bar of a fraction is bounded by 4,096 binary digits. */
const MOST = 2n ** 4096n - 1n;

const huge = fraction(10n ** 2000n + 1n);

it.each(['a * a', 'a * 2 * a', '1 / a / a', 'a - a * a', '-(a * a)'])(
  '%s is refused when the numbers run away',
  (text) => {
    expect(evaluateFormula(parsed(text), new Map([['a', huge]]))).toMatchObject({
      message: 'the numbers here run to more than a thousand digits',
    });
  },
);

const TOO_MANY_DIGITS = {
  message: 'the numbers here run to more than a thousand digits',
  help: 'use fewer or shorter numbers',
  start: 0,
  end: 1,
};

it.each<[string, Fraction, boolean]>([
  ['the greatest', fraction(MOST), true],
  ['one more', fraction(MOST + 1n), false],
  ['the least', fraction(-MOST), true],
  ['one less', fraction(-MOST - 1n), false],
  ['the smallest share', fraction(1n, MOST), true],
  ['a smaller share', fraction(1n, MOST + 1n), false],
])('%s of the numbers that a formula takes is taken, and nothing beyond', (_, value, isTaken) => {
  const found = evaluateFormula(parsed('a'), new Map([['a', value]]));
  expect(found).toEqual(isTaken ? value : TOO_MANY_DIGITS);
});

it('a hundred ordinary readings never run away', () => {
  const reading = fraction(324_781n * 10n ** 10n + 7n, 3n * 10n ** 15n);
  const product = evaluateFormula(parsed(Array(50).fill('a').join('*')), new Map([['a', reading]]));
  expect(product).not.toHaveProperty('message');
});

const GAPS = new Map<string, readonly Fraction[]>([
  ['gap[*]', [fraction(1), fraction(4), fraction(7)]],
  ['gap[2]', [fraction(4)]],
  ['gap', [fraction(7)]],
  ['none[*]', []],
]);

it.each([
  ['max(gap[*]) - min(gap[*])', 6n, 1n],
  ['spread(gap[*])', 6n, 1n],
  ['mean(gap[*])', 4n, 1n],
  ['mean(gap[*], 8)', 5n, 1n],
  ['gap - mean(gap[*])', 3n, 1n],
  ['spread(gap[2], gap)', 3n, 1n],
  ['max(gap[2])', 4n, 1n],
  ['sum(gap[*])', 12n, 1n],
  ['sum(gap[*], 2 * gap[2])', 20n, 1n],
])('%s goes over all positions', (text, n, d) => {
  expect(evaluateFormula(parsed(text), GAPS)).toEqual({ n, d });
});

it('a call without a value, which no formula has, is a fault of the program', () => {
  const root = { kind: 'call', name: 'max', values: [], start: 0, end: 5 } as const;
  expect(() => evaluateFormula({ text: 'max()', root }, new Map())).toThrow(
    new RangeError('max was read without a value'),
  );
});

it('several positions of which none has a value come to nothing', () => {
  expect(evaluateFormula(parsed('1 + max(none[*])'), GAPS)).toMatchObject({
    message: 'there is no value for none[*]',
    start: 8,
    end: 15,
  });
});
