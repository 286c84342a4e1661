import { describe, expect, test } from 'vitest';
import { expansionOf, GAUGE_STEEL, statedExpansion } from '../../src/measurement/expansion.ts';
import {
  correction,
  correctionIn,
  expandUnlike,
  grown,
  isMoved,
  isSameTemperature,
  STANDARD_TEMPERATURE,
  type StatedTemperature,
  takenToTemperature,
  type Warmth,
} from '../../src/measurement/temperature.ts';
import { exactly, standardUncertainty, subtractValues } from '../../src/measurement/value.ts';
import { add, compare, parseDecimal, subtract, toDecimal, toNumber } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';

const mm = (text: string) => toBase(parseDecimal(text), unitNamed('mm'));
const inches = (text: string) => toBase(parseDecimal(text), unitNamed('in'));
const warm = (text: string): StatedTemperature => {
  const [digits = '', unit = ''] = text.split(' ');
  return { amount: toBase(parseDecimal(digits), unitNamed(unit)), text };
};
const known = (name: string, id: string) => {
  const found = expansionOf(name);
  if (found === undefined) throw new Error(name);
  return { ...found, id };
};
const steelGauge = { ...GAUGE_STEEL, id: 'mic' };

describe('expansion', () => {
  test('the steel bar of the NPL, 500.035 mm at 23.7 °C with 11.7 ppm, is 500.013 mm at 20 °C', () => {
    const steel = { ...GAUGE_STEEL, coefficient: parseDecimal('0.0000117'), id: 'bar' };
    const at: Warmth = {
      from: warm('23.7 degC'),
      to: STANDARD_TEMPERATURE,
      id: 't',
      part: steel,
      gauge: undefined,
    };
    const { amount } = takenToTemperature(exactly(mm('500.035')), at);
    expect(toDecimal(amount, 0)).toBe('5000133535');
    expect((toNumber(amount) / 1e7).toFixed(3)).toBe('500.013');
  });

  test('the same bar, 500.0133535 mm at 20 °C, is 500.035 mm at 23.7 °C', () => {
    const steel = { ...GAUGE_STEEL, coefficient: parseDecimal('0.0000117'), id: 'bar' };
    const at: Warmth = {
      from: STANDARD_TEMPERATURE,
      to: warm('23.7 degC'),
      id: 't',
      part: steel,
      gauge: undefined,
    };
    const { amount } = takenToTemperature(exactly(mm('500.0133535')), at);
    expect((toNumber(amount) / 1e7).toFixed(5)).toBe('500.03500');
  });

  // Bansal, "Strength of Materials", problem 1.28: a rod of 200 cm, 12 millionths, 70 °C warmer, is 0.168 cm longer.
  test('a rod of 200 cm and 12 millionths grows by 0.168 cm in 70 °C', () => {
    const rod = { ...GAUGE_STEEL, coefficient: parseDecimal('0.000012'), id: 'rod' };
    const at: Warmth = { from: warm('10 degC'), to: warm('80 degC'), id: 't', part: rod, gauge: undefined };
    expect(compare(correction(mm('2000'), at), mm('1.68'))).toBe(0);
    expect(compare(grown(exactly(mm('2000')), rod, warm('90 degC')).amount, mm('2001.68'))).toBe(0);
  });

  test.each([
    ['forged steel', '11.5'],
    ['Cast iron', '11.4'],
    ['nodular iron', '11.2'],
    ['ductile cast iron', '11.2'],
    ['bronze', '18.0'],
  ])('%s grows by %s millionths for a degree', (written, millionths) => {
    expect(toDecimal(known(written, 'x').coefficient, 7)).toBe((Number(millionths) / 1e6).toFixed(7));
  });

  // A laser interferometer's user's manual, table 17-1: piston alloys, then those of blocks and heads.
  test.each([
    ['aluminium 4032', '19.4'],
    ['aluminum A132', '19.0'],
    ['aluminium alloy D132', '20.5'],
    ['F132 aluminium', '20.7'],
    ['aluminium 142', '22.5'],
    ['forged aluminium 2218', '22.3'],
    ['aluminium 319', '21.5'],
    ['aluminium 355', '22.0'],
    ['aluminium 356-T6', '21.5'],
  ])('%s grows by %s millionths, known to half a millionth', (written, millionths) => {
    const { coefficient, halfWidth } = known(written, 'x');
    expect(toNumber(coefficient) * 1e6).toBeCloseTo(Number(millionths), 12);
    expect(toNumber(halfWidth) * 1e6).toBeCloseTo(0.5, 12);
  });

  test.each(['aluminium', 'aluminum alloy', 'aluminium 6061', 'aluminium 4032 or 142'])(
    'of %s no alloy is known: it lies between the 19.0 and 22.5 of piston alloys',
    (written) => {
      const { coefficient, halfWidth } = known(written, 'x');
      const ends = [subtract(coefficient, halfWidth), add(coefficient, halfWidth)];
      expect(ends.map((end) => toNumber(end) * 1e6)).toEqual([
        expect.closeTo(19, 9),
        expect.closeTo(22.5, 9),
      ]);
    },
  );

  test.each(['titanium', 'steel-backed aluminium', 'ironwood', ''])('nothing is said of %s', (written) => {
    expect(expansionOf(written)).toBeUndefined();
  });

  test('a 4.000 in aluminium piston at 70 °F in a steel micrometer is four hundredths of a thou smaller at 20 °C', () => {
    // 4.000 × (20.75 − 11.5)e-6 × 10/9 = 0.0000411
    const at: Warmth = {
      from: warm('70 degF'),
      to: STANDARD_TEMPERATURE,
      id: 't',
      part: known('aluminium', 'p'),
      gauge: steelGauge,
    };
    expect(toNumber(correction(inches('4.000'), at)) / 254e6).toBeCloseTo(-0.0000411, 7);
  });

  test('a gauge that does not grow: the same piston differs by the 0.000096 in of 21.5 ppm', () => {
    const part = { ...known('aluminium', 'p'), coefficient: parseDecimal('0.0000215') };
    const at: Warmth = { from: warm('70 degF'), to: STANDARD_TEMPERATURE, id: 't', part, gauge: undefined };
    expect(toNumber(correction(inches('4.000'), at)) / 254e6).toBeCloseTo(-0.0000956, 7);
  });

  test('a steel shaft in a steel micrometer stands as it was read, at any temperature', () => {
    const at: Warmth = {
      from: warm('35 degC'),
      to: STANDARD_TEMPERATURE,
      id: 't',
      part: known('steel', 'shaft'),
      gauge: steelGauge,
    };
    const value = takenToTemperature(exactly(inches('3.2480')), at);
    expect(value.amount).toEqual(inches('3.2480'));
    expect(expandUnlike(at)).toBe(false);
    // 15 K × 3.2480 in × 1.15 ppm, rectangular, of the shaft and of the micrometer
    const one = (15 * 3.248 * 254e6 * 1.15e-6) / Math.sqrt(3);
    expect(standardUncertainty(value)).toBeCloseTo(one * Math.SQRT2, 6);
  });

  test('cast iron against steel is not corrected: their coefficients differ by less than they are known', () => {
    const part = known('cast iron', 'block');
    expect(expandUnlike({ part, gauge: steelGauge })).toBe(false);
    expect(expandUnlike({ part: known('aluminium', 'block'), gauge: steelGauge })).toBe(true);
    const at: Warmth = { from: warm('30 degC'), to: STANDARD_TEMPERATURE, id: 't', part, gauge: steelGauge };
    const { amount, terms } = takenToTemperature(exactly(mm('100')), at);
    expect(amount).toEqual(mm('100'));
    // Nor is it off by the error of the temperature.
    expect([...terms.keys()]).toEqual(['expansion of block', 'expansion of mic']);
  });

  test('at 20 °C nothing is moved, and only the temperature itself is uncertain', () => {
    const at: Warmth = {
      from: warm('20 degC'),
      to: STANDARD_TEMPERATURE,
      id: 't',
      part: known('aluminium', 'p'),
      gauge: steelGauge,
    };
    const value = takenToTemperature(exactly(inches('4.000')), at);
    expect(compare(value.amount, inches('4.000'))).toBe(0);
    expect([...value.terms.keys()]).toEqual(['t']);
    // 1 K × 4 in × 9.25 ppm, rectangular
    expect(standardUncertainty(value)).toBeCloseTo((4 * 254e6 * 9.25e-6) / Math.sqrt(3), 6);
  });

  test('a part that expands more than it is thought to is smaller at 20 °C, a gauge that does so makes it larger', () => {
    const at: Warmth = {
      from: warm('30 degC'),
      to: STANDARD_TEMPERATURE,
      id: 't',
      part: known('aluminium', 'p'),
      gauge: steelGauge,
    };
    const { terms } = takenToTemperature(exactly(inches('4.000')), at);
    expect(terms.get('expansion of p')?.u).toBeLessThan(0);
    expect(terms.get('expansion of mic')?.u).toBeGreaterThan(0);
  });

  test('what two readings of one session share cancels in their difference', () => {
    const part = known('aluminium', 'p');
    const at: Warmth = { from: warm('30 degC'), to: STANDARD_TEMPERATURE, id: 't', part, gauge: steelGauge };
    const [a, b] = [mm('101.60'), mm('101.60')].map((amount) => takenToTemperature(exactly(amount), at));
    if (a === undefined || b === undefined) throw new Error();
    expect(standardUncertainty(a)).toBeGreaterThan(5000);
    expect(standardUncertainty(subtractValues(a, b))).toBe(0);
  });

  test('an error in the temperature moves an aluminium bore and an aluminium piston the same way', () => {
    const at = (id: string): Warmth => ({
      from: warm('20 degC'),
      to: STANDARD_TEMPERATURE,
      id: 't',
      part: known('aluminium', id),
      gauge: steelGauge,
    });
    const bore = takenToTemperature(exactly(mm('101.68')), at('block'));
    const piston = takenToTemperature(exactly(mm('101.60')), at('piston'));
    // 0.08 mm × 9.25 ppm × 1 K: nothing
    expect(standardUncertainty(subtractValues(bore, piston))).toBeLessThan(10);
  });

  test.each([
    ['steel', 'steel', 'Swyt, J. Res. NIST 99:31; a tenth either way: our judgement, no source', 1.15],
    [
      'Ductile iron',
      'ductile iron',
      'Callister, appendix B.6; a tenth either way: our judgement, no source',
      1.12,
    ],
    ['iron', 'cast iron', 'Callister, appendix B.6; a tenth either way: our judgement, no source', 1.14],
    [
      'aluminum',
      'aluminium',
      "piston and head alloys of a laser interferometer's user's manual, table 17-1",
      1.75,
    ],
    ['aluminium a132', 'aluminium A132', "a laser interferometer's user's manual, table 17-1", 0.5],
    ['bronze', 'bronze', 'Callister, appendix B.6; a tenth either way: our judgement, no source', 1.8],
  ])('%s is named %s, with its source and how well it is known', (written, material, source, half) => {
    const { halfWidth, coefficient: _, id: __, ...found } = known(written, 'x');
    expect(found).toEqual({ material, source });
    expect(toNumber(halfWidth) * 1e6).toBeCloseTo(half, 12);
  });

  test('a figure that a document states is known to half a millionth', () => {
    const coefficient = parseDecimal('0.0000117');
    const { halfWidth, ...found } = statedExpansion(coefficient);
    expect(found).toEqual({ material: 'as stated', coefficient, source: 'as stated' });
    expect(toNumber(halfWidth) * 1e6).toBeCloseTo(0.5, 12);
    expect(statedExpansion(coefficient, 'cast iron').material).toBe('cast iron');
  });

  test('an alloy is named by its whole number, and of aluminium alone', () => {
    expect(known('aluminium 3560', 'x').material).toBe('aluminium');
    expect(known('steel 142', 'x').material).toBe('steel');
  });

  const aluminiumAt = (from: string, to = STANDARD_TEMPERATURE): Warmth => ({
    from: warm(from),
    to,
    id: 't',
    part: known('aluminium', 'p'),
    gauge: steelGauge,
  });

  test('a reading is moved where it was read at another temperature and its parts are unlike', () => {
    expect(isMoved(aluminiumAt('30 degC'))).toBe(true);
    expect(isMoved(aluminiumAt('68 degF'))).toBe(false);
    expect(isMoved({ ...aluminiumAt('30 degC'), part: known('steel', 'p') })).toBe(false);
    expect(isSameTemperature(warm('68 degF'), STANDARD_TEMPERATURE)).toBe(true);
    expect(STANDARD_TEMPERATURE.text).toBe('20 degC');
  });

  test('two materials that lie just as far apart as both may be off are not told apart', () => {
    const millionths = (text: string) => parseDecimal(`0.0000${text}`);
    const part = { ...known('steel', 'p'), coefficient: millionths('13'), halfWidth: millionths('01') };
    const gauge = { ...steelGauge, coefficient: millionths('10'), halfWidth: millionths('02') };
    expect(expandUnlike({ part, gauge })).toBe(false);
    expect(expandUnlike({ part: { ...part, coefficient: millionths('131') }, gauge })).toBe(true);
  });

  test('the correction that is in an amount is what was added to make it', () => {
    const at = aluminiumAt('30 degC');
    const added = correction(inches('4.000'), at);
    expect(added.n).toBeLessThan(0n);
    expect(compare(correctionIn(add(inches('4.000'), added), at), added)).toBe(0);
  });

  test('what a part has grown by is as uncertain as its expansion, a rectangle (JCGM 100:2008, 4.3.7)', () => {
    const piston = known('aluminium', 'piston');
    const { terms } = grown(exactly(mm('100')), piston, warm('120 degC'));
    // 100 mm × 100 K × 1.75 ppm
    expect([...terms]).toEqual([
      [
        'expansion of piston',
        { u: expect.closeTo(175_000 / Math.sqrt(3), 6), dof: Number.POSITIVE_INFINITY },
      ],
    ]);
  });

  test('each source is known for certain, and a gauge that does not grow is none', () => {
    const terms = (gauge: Warmth['gauge']) => [
      ...takenToTemperature(exactly(inches('4.000')), { ...aluminiumAt('30 degC'), gauge }).terms,
    ];
    expect(terms(steelGauge).map(([source, { dof }]) => [source, dof])).toEqual([
      ['t', Number.POSITIVE_INFINITY],
      ['expansion of p', Number.POSITIVE_INFINITY],
      ['expansion of mic', Number.POSITIVE_INFINITY],
    ]);
    expect(terms(undefined).map(([source]) => source)).toEqual(['t', 'expansion of p']);
    // 1 K × 4 in × 20.75 ppm: the part grows and the gauge does not.
    expect(terms(undefined)[0]?.[1].u).toBeCloseTo((-4 * 254e6 * 20.75e-6) / Math.sqrt(3), 6);
  });
});
