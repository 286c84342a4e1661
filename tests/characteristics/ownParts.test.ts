import { describe, expect, it } from 'vitest';
import { formulaDerivation } from '../../src/characteristics/formulaDerivation.ts';
import { ownCharacteristic } from '../../src/characteristics/own.ts';
import { ownParts } from '../../src/characteristics/ownParts.ts';
import { parts } from '../../src/characteristics/parts.ts';
import { characteristics, registryWith } from '../../src/characteristics/registry.ts';
import { startOfFile } from '../../src/diagnostic/place.ts';
import type { OwnCharacteristic } from '../../src/documents/engine/ownCharacteristic.ts';
import { ENGINE, familyOf } from '../../src/layout/family.ts';
import { WHOLE_ENGINE } from '../../src/layout/position.ts';
import { standardUncertainty } from '../../src/measurement/value.ts';
import { fraction, parseDecimal, toNumber } from '../../src/quantity/fraction.ts';
import { type Quantity, toBase, type Unit, unitNamed } from '../../src/quantity/units.ts';
import { parsed } from '../formula/parsed.ts';
import { gridOfRows } from './exampleGrid.ts';

const PLACE = startOfFile('shop.yaml');
const BUILT = { characteristics, parts };

const own = (id: string, more: Partial<OwnCharacteristic> = {}): OwnCharacteristic => ({
  id,
  label: id,
  quantity: 'length',
  family: ENGINE,
  parts: [],
  formula: undefined,
  units: new Map(),
  instrument: undefined,
  words: { above: undefined, below: undefined },
  after: undefined,
  places: { id: PLACE, formula: PLACE, after: PLACE },
  ...more,
});

describe('a figure that a shop adds', () => {
  const measures = registryWith([]);

  it('that says nothing of itself is a length that is read with a caliper', () => {
    expect(ownCharacteristic(own('wear'), measures, ['block', 'head'])).toStrictEqual({
      id: 'wear',
      label: 'wear',
      description: 'wear, added by the shop.',
      quantity: 'length',
      family: ENGINE,
      of: 'block',
      dependsOn: ['head'],
      usual: 'caliper',
      formula: 'read directly',
      derivations: [],
      words: { above: 'over', below: 'under' },
      source: 'added by the shop',
      examples: [],
    });
  });

  it('says what it is worked out from, what it is called and when it is read', () => {
    const formula = parsed('cylinder_bore - 4');
    const all = own('wear', {
      formula,
      instrument: 'bore gauge',
      words: { above: 'worn', below: 'tight' },
      after: 'cylinder_bore',
      cycle: fraction(360),
      outcomes: { pass: 'good', fail: 'bad' },
    });
    const found = ownCharacteristic(all, measures, []);
    expect(found).toMatchObject({
      of: undefined,
      dependsOn: [],
      usual: 'bore gauge',
      formula: 'cylinder_bore - 4',
      words: { above: 'worn', below: 'tight' },
      after: 'cylinder_bore',
      cycle: fraction(360),
      outcomes: { pass: 'good', fail: 'bad' },
    });
    expect(found.derivations.map(({ route, inputs }) => [route, inputs])).toEqual([
      ['cylinder_bore - 4', ['cylinder_bore']],
    ]);
  });

  it.each([
    ['length', 'caliper'],
    ['torque', 'torque wrench'],
    ['force', 'spring scale'],
    ['pressure', 'pressure gauge'],
    ['mass', 'balance'],
    ['angle', 'protractor'],
    ['temperature', 'thermometer'],
    ['volume', 'other'],
  ] as const)('of %s is usually read with: %s', (quantity, usual) => {
    expect(ownCharacteristic(own('figure', { quantity }), measures, []).usual).toBe(usual);
  });
});

describe('what a figure of a shop is of', () => {
  const partsOf = (one: OwnCharacteristic, ...others: readonly OwnCharacteristic[]) =>
    ownParts([one, ...others], BUILT).partsOf(one);

  it('is a part that is known, by any of its words', () => {
    const wear = own('wear', { parts: [' Big_End  bearings', 'rod shell', 'crank'] });
    expect(ownParts([wear], BUILT).parts).toEqual([]);
    expect(partsOf(wear)).toEqual(['rod_shell', 'crankshaft']);
  });

  it('or one that the shop names, which is where the figure is measured', () => {
    const fan = own('fan_wobble', { parts: ['Cooling-Fan'], family: familyOf('cylinder') });
    const hub = own('hub_wear', { parts: ['cooling fan', 'fan hub'] });
    const found = ownParts([fan, hub], BUILT);
    expect(found.parts).toEqual([
      {
        id: 'cooling fan',
        label: 'cooling fan',
        plural: 'cooling fans',
        also: [],
        family: familyOf('cylinder'),
        material: [],
        assembledFrom: [],
        carries: [],
      },
      {
        id: 'fan hub',
        label: 'fan hub',
        plural: 'fan hubs',
        also: [],
        family: ENGINE,
        material: [],
        assembledFrom: [],
        carries: [],
      },
    ]);
    expect(found.partsOf(hub)).toEqual(['cooling fan', 'fan hub']);
  });

  it('and all that its formula is worked out from, its own first and each once', () => {
    const share = own('share', {
      parts: ['piston'],
      formula: parsed('wear / main_housing_bore + unknown + bore'),
    });
    const wear = own('wear', { parts: ['ring'], formula: parsed('cylinder_bore - share') });
    expect(partsOf(share, wear)).toEqual([
      'piston',
      'main_housing',
      'main_cap',
      'main_bolt',
      'ring',
      'cylinder',
    ]);
    expect(partsOf(own('plain'))).toEqual([]);
  });
});

describe('the last digit of a figure that a formula gives', () => {
  const IN = unitNamed('in');
  const units = new Map<Quantity, Unit>(
    ['in', 'N', 'g', '%', 'cc'].map((name) => [unitNamed(name).quantity, unitNamed(name)]),
  );
  const bore = own('bore_read');
  const find = (id: string) => (id === 'bore_read' ? bore : undefined);
  const worked = (quantity: Quantity, formula: string, reading: string) =>
    formulaDerivation({ quantity, units }, parsed(formula), { find }).compute(
      [gridOfRows([[reading]], IN)],
      {},
      [{ id: 'bore_read', position: WHOLE_ENGINE }],
    );
  const digit = (quantity: Quantity, unit: string, formula: string, reading = '4') => {
    const found = worked(quantity, formula, reading)?.lastDigit;
    return found && toNumber(found) / toNumber(unitNamed(unit).factor);
  };

  it.each<[Quantity, string, string, number | undefined]>([
    ['length', 'in', '2 * bore_read', undefined],
    ['percent', '%', 'bore_read', 0.1],
    ['force', 'N', 'bore_read', 0.001],
    ['force', 'N', '2.5 * bore_read', 0.01],
    ['force', 'N', '250 * bore_read', 1],
    ['force', 'N', '25000 * bore_read', 1],
    ['force', 'N', '-250 * bore_read', 1],
    ['force', 'N', 'bore_read / 100', 0.00001],
    ['force', 'N', 'bore_read - bore_read', 0.001],
    ['mass', 'g', 'bore_read', 0.0001],
    ['mass', 'g', '250 * bore_read', 0.1],
    ['volume', 'cc', 'bore_read', 0.001],
  ])('of a %s in %s by %s is %s', (quantity, unit, formula, expected) => {
    const found = digit(quantity, unit, formula);
    if (expected === undefined) expect(found).toBeUndefined();
    else expect(found).toBeCloseTo(expected, 9);
  });

  it('of nominal sizes alone goes by its own size', () => {
    const none = formulaDerivation({ quantity: 'length', units }, parsed('stroke / 2'), { find });
    const sizes = new Map([['stroke', toBase(parseDecimal('5'), IN)]]);
    const found = none.compute([], { sizes }, []);
    expect(toNumber(found?.mean.amount ?? fraction(0)) / toNumber(IN.factor)).toBe(2.5);
    expect(found?.lastDigit && toNumber(found.lastDigit) / toNumber(IN.factor)).toBeCloseTo(0.0001, 12);
    expect(found && standardUncertainty(found.mean)).toBe(0);
  });

  it('of a reading of its own quantity beside one of another goes by its own size', () => {
    const load = own('load_read', { quantity: 'force' });
    const read = (id: string) => (id === 'load_read' ? load : find(id));
    const grids = [gridOfRows([['4']], IN), gridOfRows([['2']], unitNamed('N'))];
    const places = ['bore_read', 'load_read'].map((id) => ({ id, position: WHOLE_ENGINE }));
    const formula = parsed('bore_read * load_read');
    const found = formulaDerivation({ quantity: 'length', units }, formula, { find: read }).compute(
      grids,
      {},
      places,
    );
    expect(found?.mean.amount).toEqual(toBase(parseDecimal('8'), IN));
    expect(found?.lastDigit).toEqual(toBase(parseDecimal('0.0001'), IN));
  });

  it('is asked of nothing where the numbers give nothing, and it is told why', () => {
    const { compute, problem } = formulaDerivation(
      { quantity: 'force', units },
      parsed('sqrt(bore_read - 4)'),
      {
        find,
      },
    );
    const grids = (reading: string) => [gridOfRows([[reading]], IN)];
    const places = [{ id: 'bore_read', position: WHOLE_ENGINE }];
    expect(compute(grids('4'), {}, places)).toBeUndefined();
    expect(problem?.(grids('4'), {}, places)).toEqual({
      message: 'its error cannot be worked out, since it takes the root of zero',
      start: 0,
      end: 19,
    });
    expect(problem?.(grids('3'), {}, places)).toMatchObject({
      message: 'this takes the square root of a negative number, -1',
    });
    expect(problem?.(grids('5'), {}, places)).toBeUndefined();
  });
});
