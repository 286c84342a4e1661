import { describe, expect, it } from 'vitest';
import { compressionRatio, cylinderOf } from '../../src/characteristics/block/volume.ts';
import { exactly, standardUncertainty, type Value } from '../../src/measurement/value.ts';
import { add, parseDecimal, toNumber } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';

const MM = unitNamed('mm');

const uncertain = (amount: Value['amount'], u: number): Value => ({
  amount,
  terms: new Map([['error', { u, dof: Number.POSITIVE_INFINITY }]]),
});

const mm = (text: string) => toBase(parseDecimal(text), MM);

describe('the error of a volume', () => {
  it('goes with its slope in the bore and in the height (differences of a micrometre)', () => {
    const step = mm('0.001');
    const u = toNumber(step);
    const [bore, height] = [mm('86'), mm('1.2')];
    const volumeOf = (b: Value, h: Value): Value => cylinderOf(b, h) ?? exactly(mm('0'));
    const change = (b: typeof bore, h: typeof height): number =>
      toNumber(volumeOf(exactly(b), exactly(h)).amount) -
      toNumber(volumeOf(exactly(bore), exactly(height)).amount);
    const byBore = standardUncertainty(volumeOf(uncertain(bore, u), exactly(height)));
    const byHeight = standardUncertainty(volumeOf(exactly(bore), uncertain(height, u)));
    expect(byBore / change(add(bore, step), height)).toBeCloseTo(1, 4);
    expect(byHeight / change(bore, add(height, step))).toBeCloseTo(1, 4);
  });
});

describe('the error of a compression ratio', () => {
  it('goes with its slope in both volumes (differences of a thousandth of a cubic centimetre)', () => {
    const [swept, clearance, step] = ['499.56', '61.96', '0.001'].map((text) => parseDecimal(text));
    if (swept === undefined || clearance === undefined || step === undefined) throw new Error('no figures');
    const ratio = (s: Value, c: Value): Value => compressionRatio(s, c) ?? exactly(parseDecimal('0'));
    const at = toNumber(ratio(exactly(swept), exactly(clearance)).amount);
    const bySwept = standardUncertainty(ratio(uncertain(swept, 0.001), exactly(clearance)));
    const byClearance = standardUncertainty(ratio(exactly(swept), uncertain(clearance, 0.001)));
    const moved = toNumber(ratio(exactly(add(swept, step)), exactly(clearance)).amount) - at;
    const movedBack = at - toNumber(ratio(exactly(swept), exactly(add(clearance, step))).amount);
    expect(bySwept / moved).toBeCloseTo(1, 4);
    expect(byClearance / movedBack).toBeCloseTo(1, 3);
  });

  it('is none where nothing is left over the piston', () => {
    expect(compressionRatio(exactly(parseDecimal('500')), exactly(parseDecimal('0')))).toBeUndefined();
  });
});
