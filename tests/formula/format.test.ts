import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formatFormula } from '../../src/formula/format.ts';
import { LONGEST_FORMULA } from '../../src/formula/parse.ts';
import { type FormulaNode, partsOf } from '../../src/formula/tree.ts';
import { runs } from '../propertyRuns.ts';
import { parsed } from './parsed.ts';
import { formulaText } from './random-formula.ts';

const READINGS = new Map([
  ['bore', '4.1250'],
  ['stroke', '5.0000'],
  ['wear', '-0.0003'],
  ['gap[*]', '0.017, -0.018'],
]);

it.each([
  ['0.0005 * bore', '0.0005 × 4.1250'],
  ['0.0005*bore', '0.0005 × 4.1250'],
  ['bore', '4.1250'],
  ['wear', '-0.0003'],
  ['-wear', '−(-0.0003)'],
  ['bore - wear', '4.1250 − (-0.0003)'],
  ['abs(wear)', 'abs(-0.0003)'],
  ['max(bore/2, .5, other)', 'max(4.1250 / 2, .5, other)'],
  ['bore-(stroke-1)', '4.1250 − (5.0000 − 1)'],
  ['((bore)-stroke)-1', '4.1250 − 5.0000 − 1'],
  ['(bore + 1) * 2', '(4.1250 + 1) × 2'],
  ['-(bore + 1)', '−(4.1250 + 1)'],
  ['max(gap[*]) - gap[1]', 'max(0.017, -0.018) − gap[1]'],
  ['2 / (3 * bore)', '2 / (3 × 4.1250)'],
])('%s is shown as %s', (text, shown) => {
  expect(formatFormula(parsed(text), READINGS)).toBe(shown);
});

it('a value of any name can stand in, without reaching what every object has', () => {
  expect(formatFormula(parsed('constructor * 2'), new Map())).toBe('constructor × 2');
});

it.each([
  ['((1+2))*(3)', '(1 + 2) × 3'],
  ['1+(2*3)', '1 + 2 × 3'],
  ['min( 1 , 2 )', 'min(1, 2)'],
  ['- - bore', '−−bore'],
])('%s is printed as %s', (text, printed) => {
  expect(formatFormula(parsed(text), new Map())).toBe(printed);
});

it('printing a formula and reading it again gives the same formula', () => {
  fc.assert(
    fc.property(formulaText, (text) => {
      const first = parsed(text);
      const printed = formatFormula(first, new Map()).replaceAll('×', '*').replaceAll('−', '-');
      fc.pre(printed.length <= LONGEST_FORMULA);
      expect(shapeOf(parsed(printed).root)).toEqual(shapeOf(first.root));
    }),
    runs(3000),
  );
});

/** A node without its places. */
function shapeOf(node: FormulaNode): unknown {
  const { start, end, ...rest } = node;
  const own = Object.entries(rest).filter(([, value]) => typeof value === 'string');
  expect(end).toBeGreaterThan(start);
  return [own, partsOf(node).map(shapeOf)];
}
