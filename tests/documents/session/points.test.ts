import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/documents/session/reading.ts';
import { toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { figuresOf, readingOf, refusedIn } from '../readBlock.ts';

const strip = (at: string) => `{ measure: main_bearing_clearance, at: { 1: ${at} } }`;

function pointOf(block: string): Point {
  const point = readingOf(block).rows[0]?.[0];
  if (point === undefined) throw new Error('no point');
  return point;
}

const inches = (amount: Point['amount'] | undefined, decimals = 5) =>
  amount && toDecimal(fromBase(amount, unitNamed('in')), decimals);

describe('a reading that is a range is its middle, with half its width', () => {
  it.each([
    ['under a mark', 'under 0.004', '0.00200', '0.00200'],
    ['between two marks', '0.003 to 0.004', '0.00350', '0.00050'],
    ['between two marks with a unit', '3 thou to 4 thou', '0.00350', '0.00050'],
    ['feelers', '{ go: 0.017, no_go: 0.018 }', '0.01750', '0.00050'],
    ['feelers with a note', '{ go: 0.017, no_go: 0.018, note: stiff }', '0.01750', '0.00050'],
    ['under, as a value', '{ value: under 0.004, note: did not fill }', '0.00200', '0.00200'],
  ])('%s', (_, at, middle, half) => {
    const point = pointOf(strip(at));
    expect(inches(point.amount)).toBe(middle);
    expect([inches(point.range?.below), inches(point.range?.above)]).toEqual([half, half]);
  });

  it.each([
    ['falling', '0.004 to 0.003', 'value 0.004 to 0.003'],
    ['without width', '0.004 to 0.004', 'value 0.004 to 0.004'],
    ['feelers the wrong way round', '{ go: 0.018, no_go: 0.017 }', 'value { go: 0.018, no_go: 0.017 }'],
    ['under nothing', 'under 0', 'value under 0'],
  ])('%s is refused', (_, at, place) => expect(refusedIn(strip(at))).toEqual([place]));

  it('over a mark begins at it, and nothing tells where it ends', () => {
    const point = pointOf(strip('over 0.006'));
    expect(inches(point.amount)).toBe('0.00600');
    expect(inches(point.range?.below)).toBe('0.00000');
    expect(point.range).toHaveProperty('above', undefined);
    expect(point.written).toBe('over 0.006');
  });

  it('feelers need both figures', () => {
    expect(refusedIn(strip('{ go: 0.017 }'))).toEqual(['missing-key 1']);
    expect(refusedIn(strip('{ no_go: 0.017 }'))).toEqual(['missing-key 1']);
  });

  it('a strip is read at both ends', () => {
    const both = readingOf(strip('{ front: 0.003, rear: under 0.004 }'));
    expect(figuresOf(both)).toEqual([['0.0030'], ['0.0020']]);
  });
});

describe('a point read several times', () => {
  it('is the exact mean of its readings, and keeps them', () => {
    const point = pointOf(strip('{ repeat: [0.0030, 0.0031, 0.0031] }'));
    expect(point.amount.n * 3n).toBe(point.amount.d * (30n + 31n + 31n) * 25_400n);
    expect(point.repeats).toHaveLength(3);
    expect(point.range).toBeUndefined();
    expect(point.written).toBe('0.0030, 0.0031, 0.0031');
  });

  it('is refused without readings', () => expect(refusedIn(strip('{ repeat: [] }'))).toHaveLength(1));

  it('a list is never repeats', () =>
    expect(refusedIn(strip('[0.0030, 0.0031]'))).toEqual(['value [0.0030, 0.0031]']));
});

describe('bench shorthand', () => {
  const bore = (rest: string) => `{ measure: main_bearing_bore, ${rest} }`;
  const amount = (rest: string) => inches(pointOf(bore(rest)).amount);

  it.each([
    ['deviations from a master', 'set_to: 3.2500, at: { 1: +0.0007 }', '3.25070'],
    ['deviations below the master', 'set_to: 3.2500, at: { 1: -0.0002 }', '3.24980'],
    ['tenths above a master', 'in: tenths, set_to: 3.2500, at: { 1: +7 }', '3.25070'],
    ['tenths below it', 'in: tenths, set_to: 3.2500, at: { 1: -3 }', '3.24970'],
    ['half a tenth', 'in: tenths, set_to: 3.2500, at: { 1: 7.5 }', '3.25075'],
    ['tenths with a leading zero, which is decimal', 'in: tenths, base: 3.24, at: { 1: 08 }', '3.24080'],
    ['tenths over a base', 'in: tenths, base: 3.24, at: { 1: 78 }', '3.24780'],
    ['thou over a base', 'in: thou, base: 3.2, at: { 1: 47 }', '3.24700'],
    ['hundredths of a millimetre', 'in: hundredths, base: 82.5 mm, at: { 1: 5 }', '3.25000'],
    ['a master in its own unit', 'in: tenths, set_to: 82.55 mm, at: { 1: 0 }', '3.25000'],
    ['a reading with its own unit over the base', 'base: 3.24 in, at: { 1: 0.0078 in }', '3.24780'],
    ['without a leading zero', 'set_to: 3.25, at: { 1: .0007 }', '3.25070'],
    ['a signed one without a leading zero', 'set_to: 3.25, at: { 1: +.0007 }', '3.25070'],
  ])('%s', (_, rest, expected) => expect(amount(rest)).toBe(expected));

  it('keeps what was typed, and the step that it stands for', () => {
    const point = pointOf(bore('in: tenths, set_to: 3.2500, at: { 1: +7 }'));
    expect(point.written).toBe('+7');
    expect(inches(point.lastDigit)).toBe('0.00010');
  });

  it.each([
    ['05 without in:', 'at: { 1: 05 }', 'scalar'],
    ['a number that ends in its point', 'in: tenths, base: 3.24, at: { 1: 5. }', 'scalar'],
    ['a hexadecimal number', 'in: tenths, base: 3.24, at: { 1: 0x1F }', 'scalar'],
    ['an exponent', 'at: { 1: 3e0 }', 'scalar'],
    ['a count of another thing', 'in: tens, base: 3.24, at: { 1: 5 }', 'value'],
  ])('%s is refused', (_, rest, code) =>
    expect(refusedIn(bore(rest)).map((each) => each.split(' ')[0])).toEqual([code]),
  );
});

describe('a gauge that was zeroed at the journal', () => {
  it('reads clearances', () => {
    const block = '{ measure: main_bearing_clearance, in: tenths, set_to: journal, at: { 1: +29 } }';
    expect(inches(pointOf(block).amount)).toBe('0.00290');
  });

  it('cannot measure a bore so', () => {
    expect(refusedIn('{ measure: main_bearing_bore, in: tenths, set_to: journal, at: { 1: +29 } }')).toEqual([
      'value journal',
    ]);
  });
});
