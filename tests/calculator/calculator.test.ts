import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { newCalculator } from '../../src/calculator/calculator.ts';
import { toNumber } from '../../src/quantity/fraction.ts';
import { UNITS, type Unit, unitsOf } from '../../src/quantity/units.ts';

const calculator = newCalculator();
const NOTHING = new Map();

function worked(expression: string): string {
  const result = calculator.calculate(expression, NOTHING);
  return 'text' in result ? result.text : `! ${result.problem}`;
}

const isScaled = ({ name, quantity }: Unit): boolean =>
  name !== '' && quantity !== 'percent' && quantity !== 'temperature';

describe('units', () => {
  it.each(UNITS.filter(isScaled).map((unit) => [unit.name, unit] as const))('%s is ours', (name, unit) => {
    const others = unitsOf(unit.quantity);
    expect(others.length).toBeGreaterThan(0);
    for (const other of others) {
      const ratio = toNumber(unit.factor) / toNumber(other.factor);
      const text = worked(`1000 ${name} to ${other.name}`);
      expect(Number.parseFloat(text) / 1000 / ratio, text).toBeCloseTo(1, 9);
    }
  });

  it('of temperature have their zero', () => {
    expect(worked('20 degC to degF')).toBe('68 degF');
    expect(worked('0 degF to degC')).toBe('-17.77777778 degC');
  });

  // NIST SP 811, B.8.
  it.each([
    ['0.030 in to mm', '0.762 mm'],
    ['1 psi to kPa', '6.894757293 kPa'],
    ['1 gal/min to L/min', '3.785411784 L / minute'],
    ['1 inHg to kPa', '3.38638864 kPa'],
    ['1 lbf ft to N m', '1.355817948 N m'],
  ])('%s is %s', (expression, text) => expect(worked(expression)).toBe(text));
});

describe('an expression', () => {
  it.each([
    'import',
    'createUnit',
    'evaluate',
    'parse',
    'simplify',
    'derivative',
    'compile',
    'parser',
    'config',
    'zeros',
  ])('cannot call %s', (name) => expect(worked(`${name}("1")`)).toBe(`! ${name} cannot be used here`));

  it.each(['1:1e9', 'sum(1:1e7)', '0:1e-9:1', '1:0:2', 'range(1, 1e9)', '1 in:2 in'])(
    'is no list without end: %s',
    (text) => expect(worked(text)).toMatch(/^! a range has at most 10000 numbers$/),
  );

  it('may take some of the values', () => {
    const values = new Map([['cylinder_bore', { numbers: [4, 2, 3, 1], unit: '', isList: true }]]);
    expect(calculator.calculate('max(cylinder_bore[2:4])', values)).toEqual({ text: '3' });
  });

  it('takes sums of values by name, one or a list', () => {
    const values = new Map([
      ['bore', { numbers: [4], unit: 'in', isList: false }],
      ['cylinder_bore', { numbers: [4.001, 4.003], unit: 'in', isList: true }],
      ['preload', { numbers: [45], unit: 'lbf ft', isList: false }],
    ]);
    const text = (expression: string) => calculator.calculate(expression, values);
    expect(calculator.unknownNames('max(cylinder_bore) - bore + 2 mm to thou')).toEqual([
      'cylinder_bore',
      'bore',
    ]);
    expect(text('max(cylinder_bore) - bore to thou')).toEqual({ text: '3 thou' });
    expect(text('cylinder_bore[2] - cylinder_bore[1] to thou')).toEqual({ text: '2 thou' });
    expect(text('preload to N m')).toEqual({ text: '61.01180767 N m' });
    expect(text('pi/4 * bore^2 * 5 in * 4 to in3')).toEqual({ text: '251.3274123 in3' });
  });

  it.each(['2 in + 1 N', '3 +', 'bore'])(
    'that makes no sense is a problem, and no more: %s',
    (expression) => {
      expect(calculator.calculate(expression, NOTHING)).toHaveProperty('problem');
    },
  );
});

it('no other command pays for it', () => {
  const dist = (file: string) => readFileSync(new URL(`../../dist/${file}`, import.meta.url), 'latin1');
  expect(dist('calculator.cjs')).toContain('Units do not match');
  expect(dist('run.cjs')).not.toContain('Units do not match');
});
