import fc from 'fast-check';
import { derivative } from 'mathjs';
import { expect, it } from 'vitest';
import { evaluateFormula, type FormulaValues, type PartResults } from '../../src/formula/evaluate.ts';
import { isFormulaProblem } from '../../src/formula/problem.ts';
import { type Slopes, slopesOf } from '../../src/formula/slopes.ts';
import { type Fraction, fraction, toNumber } from '../../src/quantity/fraction.ts';
import { runs, some } from '../propertyRuns.ts';
import { parsed, valuesOf } from './parsed.ts';
import { formulaText } from './random-formula.ts';

function slopes(text: string, values: FormulaValues): Slopes | undefined {
  const parts: PartResults = new Map();
  const formula = parsed(text);
  return isFormulaProblem(evaluateFormula(formula, values, parts))
    ? undefined
    : slopesOf(formula, values, parts);
}

const GAPS: FormulaValues = new Map<string, Fraction | readonly Fraction[]>([
  ['gap', fraction(7)],
  ['gap[*]', [1, 4, 7].map((each) => fraction(each))],
  ['same[*]', [5, 5, 5].map((each) => fraction(each))],
]);

/** By hand: the result moves with each position as stated. */
it.each<[string, Record<string, readonly number[]>]>([
  ['max(gap[*])', { 'gap[*]': [0, 0, 1] }],
  ['min(gap[*])', { 'gap[*]': [1, 0, 0] }],
  ['mean(gap[*])', { 'gap[*]': [1 / 3, 1 / 3, 1 / 3] }],
  ['mean(gap[*], 8)', { 'gap[*]': [1 / 4, 1 / 4, 1 / 4] }],
  ['spread(gap[*])', { 'gap[*]': [-1, 0, 1] }],
  ['2 * (max(gap[*]) - min(gap[*]))', { 'gap[*]': [-2, 0, 2] }],
  ['gap - mean(gap[*])', { gap: [1], 'gap[*]': [-1 / 3, -1 / 3, -1 / 3] }],
  ['spread(2 * gap, gap[*])', { gap: [2], 'gap[*]': [-1, 0, 0] }],
  ['3 * sum(gap[*])', { 'gap[*]': [3, 3, 3] }],
  ['gap * gap', { gap: [14] }],
  ['abs(-gap) + round(gap / 2, 1)', { gap: [1.5] }],
  ['sqrt(gap + 2)', { gap: [1 / 6] }],
  ['2 / gap', { gap: [-2 / 49] }],
])('%s moves with each of its values', (text, expected) => {
  const found = slopes(text, GAPS);
  expect([...(found?.keys() ?? [])]).toEqual(Object.keys(expected));
  for (const [name, each] of Object.entries(expected)) {
    for (const [index, slope] of each.entries()) expect(found?.get(name)?.[index]).toBeCloseTo(slope, 12);
  }
});

it('the spread of positions that read the same keeps the errors of two of them', () => {
  expect(slopes('spread(same[*])', GAPS)?.get('same[*]')).toEqual([1, 0, -1]);
  expect(slopes('max(same[*]) - min(same[*])', GAPS)?.get('same[*]')).toEqual([1, 0, -1]);
});

it('the size of zero grows to either side, and falls with what lies below', () => {
  const at = (a: string) => slopes('abs(a)', valuesOf({ a }))?.get('a');
  expect([at('0'), at('-2'), at('2')]).toEqual([[1], [-1], [1]]);
});

it('a formula that was not worked out has none', () => {
  expect(() => slopesOf(parsed('1 + a'), valuesOf({}), new Map())).toThrow(
    'the formula was not worked out at 0',
  );
});

it('the root of zero has no slope', () => {
  expect(slopes('sqrt(gap - 7)', GAPS)?.get('gap')).toEqual([Number.POSITIVE_INFINITY]);
});

it('slopes are the derivatives that another library finds', () => {
  const texts = { bore: '4.1250', stroke: '5', wear: '-0.0003', cap_2: '0' };
  const values = valuesOf(texts);
  const numbers = Object.fromEntries([...values].map(([name, value]) => [name, toNumber(value)]));
  let compared = 0;
  const differentiable = formulaText.filter((text) => !/max|min|mean|sum|round|abs/.test(text));
  fc.assert(
    fc.property(differentiable, (text) => {
      const ours = slopes(text, values)?.get('bore')?.[0];
      if (ours === undefined) return;
      const theirs = Number(derivative(text, 'bore').evaluate(numbers));
      expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(theirs)));
      compared += 1;
    }),
    { seed: 31, ...runs(8000, 3000) },
  );
  expect(compared).toBeGreaterThan(some(500, 150));
}, 60_000);
