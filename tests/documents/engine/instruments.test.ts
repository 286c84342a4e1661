import { describe, expect, it } from 'vitest';
import type { RegisteredInstrument } from '../../../src/documents/engine/instruments.ts';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { ENGINE, refusalsOf, shopOf } from '../../shopOf.ts';

const files = (line: string) => ({
  'e/engine.yaml': ENGINE,
  'i.yaml': `kind: instruments\ninstruments:\n  it: ${line}\n`,
});

function read(line: string): RegisteredInstrument {
  const found = shopOf(files(line)).engine?.instruments.get('it');
  if (found === undefined) throw new Error(`not read: ${refusalsOf(files(line)).join(', ')}`);
  return found;
}

describe('a registered instrument', () => {
  it('carries what is stated of it, in its own units', () => {
    const found = read(
      '{ type: micrometer, range: { from: 3 in, to: 4 in }, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in, calibration: { uncertainty: 0.002 mm, k: 2 }, calibrated: 2026-01-10, due: 2027-01-10 }',
    );
    expect(found).toMatchObject({ id: 'it', type: 'micrometer', assumed: false, due: '2027-01-10' });
    expect(found.range && [found.range.from, found.range.to].map(toNumber)).toEqual([
      762_000_000, 1_016_000_000,
    ]);
    expect(found.resolution && toNumber(found.resolution)).toBe(25_400);
    expect(found.repeatability && toNumber(found.repeatability)).toBe(12_700);
    expect(found.maxError).toMatchObject({ amount: { n: 25_400n } });
    expect(found.calibration?.k).toBe(2);
    expect(found.calibration && toNumber(found.calibration.uncertainty)).toBe(20_000);
  });

  it('with nothing stated has nothing', () => {
    const { place, ...rest } = read('{ type: other }');
    expect(rest).toEqual({
      id: 'it',
      type: 'other',
      quantity: 'length',
      unit: undefined,
      certificates: [],
      isPutRight: false,
      assumed: false,
    });
    expect(place.line).toBe(3);
  });

  it('may be off by a percentage of the reading', () => {
    const { maxError } = read('{ type: torque wrench, max_error: 4 % }');
    expect(maxError && 'share' in maxError && toNumber(maxError.share)).toBe(0.04);
  });

  it('of another type measures what its figures are in', () => {
    const found = read('{ type: other, max_error: 2 psi, resolution: 1 psi }');
    expect(found.resolution && toNumber(found.resolution)).toBeCloseTo(6.894757, 5);
  });

  it('of a kind that is not known here is another kind, and is taken', () => {
    expect(read('{ type: steel rule, resolution: 0.5 mm }').type).toBe('other');
  });

  it('a strip keeps its marks', () => {
    expect(read('{ type: gauging strip, marks: [0.002 in, 0.003 in, 4 thou] }').marks?.map(toNumber)).toEqual(
      [508_000, 762_000, 1_016_000],
    );
  });
});

describe('what cannot be is refused, and nothing is judged', () => {
  it.each([
    ['marks that do not rise', '{ type: gauging strip, marks: [0.003 in, 0.002 in] }', 'value'],
    ['marks that stand still', '{ type: gauging strip, marks: [0.003 in, 0.003 in] }', 'value'],
    ['a plain number without a unit', '{ type: micrometer, resolution: 0.0001 }', 'no-unit'],
    ['a resolution of another quantity', '{ type: micrometer, resolution: 1 psi }', 'wrong-quantity'],
    ['a day that is none', '{ type: micrometer, due: 2026-02-30 }', 'value'],
    ['a key that nobody knows', '{ type: micrometer, accuracy: 0.0001 in }', 'unknown-key'],
  ])('%s', (_, line, code) => {
    expect(refusalsOf(files(line)).map((each) => each.replace(/.* /, ''))).toEqual([code]);
    expect(shopOf(files(line)).engine).toBeUndefined();
  });
});

describe('registers', () => {
  it('the nearer one stands over the higher, instrument by instrument', () => {
    const register = (resolution: string, more = '') =>
      `kind: instruments\ninstruments:\n  it: { type: micrometer, resolution: ${resolution} in }\n${more}`;
    const { engine } = shopOf({
      'i.yaml': register('0.001', '  other: { type: caliper }\n'),
      'row/i.yaml': register('0.0001'),
      'row/e/engine.yaml': ENGINE,
    });
    expect(engine?.instruments.get('it')?.resolution?.n).toBe(25_400n);
    expect(engine?.instruments.get('other')?.type).toBe('caliper');
  });
});

describe('an instrument that is due', () => {
  const dates = (calibrated: string, due: string) =>
    refusalsOf(files(`{ type: micrometer, calibrated: ${calibrated}, due: ${due} }`));

  it('before it was calibrated has its days exchanged', () => {
    expect(dates('2027-01-10', '2026-01-10')).toEqual(['i.yaml:3:56 value']);
  });

  it('on the day of its calibration or later is taken', () => {
    expect(dates('2026-01-10', '2026-01-10')).toEqual([]);
    expect(dates('2026-01-10', '2027-01-10')).toEqual([]);
  });
});
