import { describe, expect, it } from 'vitest';
import { type Characteristic, placesOf } from '../../src/characteristics/characteristic.ts';
import { parts } from '../../src/characteristics/parts.ts';
import { characteristics, registryWith } from '../../src/characteristics/registry.ts';
import { startOfFile } from '../../src/diagnostic/place.ts';
import { ENGINE, STEP } from '../../src/layout/family.ts';
import { wordsOf } from '../../src/layout/part.ts';
import { WHOLE_ENGINE } from '../../src/layout/position.ts';
import { areRelated } from '../../src/layout/relate.ts';
import { shopOf } from '../shopOf.ts';
import { asWritten, gridsOfExample, unitOfExample } from './exampleGrid.ts';

const PLACE = startOfFile('shop.yaml');
const registry = registryWith([]);
const named = characteristics.map((each) => [each.id, each] as const);
const layout = shopOf({
  'e/engine.yaml':
    'kind: engine\nname: A\nlayout: { cylinders: 2, mains: 3, crankpins: 2, cam_bearings: 3, lobes: 4, gears: [1, 2], valves: { 1: [I, E], 2: [I, E] } }\n',
}).engine?.document.layout;

describe('every entry of the registry', () => {
  it('has an id of its own', () => {
    expect(new Set(characteristics.map(({ id }) => id)).size).toBe(characteristics.length);
  });

  it('covers what the trade measures of a bottom end and its cylinders', () => {
    const ids = new Set(characteristics.map(({ id }) => id));
    for (const wanted of [
      'main_journal_diameter main_housing_bore main_shell_thickness main_bearing_bore main_bearing_clearance',
      'crankpin_diameter rod_housing_bore rod_shell_thickness rod_bearing_bore rod_bearing_clearance',
      'rod_side_clearance crankshaft_end_play crankshaft_runout turning_torque',
      'cylinder_bore piston_diameter piston_clearance ring_end_gap',
    ].flatMap((line) => line.split(' '))) {
      expect(ids, wanted).toContain(wanted);
    }
  });

  it.each(named)('%s: an id in small letters, and every text filled', (id, each) => {
    expect(id).toMatch(/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/);
    const texts = [
      each.label,
      each.description,
      each.formula,
      each.source,
      each.words.above,
      each.words.below,
    ];
    expect(texts.filter((text) => text.trim() === '')).toEqual([]);
  });

  it('has a label of its own, so that two tables are never headed alike', () => {
    expect(new Set(characteristics.map(({ label }) => label)).size).toBe(characteristics.length);
  });

  it.each(named)(
    '%s: what it is worked out from exists, and lies at a position that its own leads to',
    (_, each) => {
      for (const derivation of each.derivations) {
        const { inputs, route } = derivation;
        expect(route).not.toBe('');
        for (const id of inputs) {
          const input = registry.find(id);
          expect(input, id).toBeDefined();
          if (input === undefined || layout === undefined) continue;
          expect(areRelated(each.family, input.family), id).toBe(true);
        }
        for (const position of layout?.positionsOf(each.family) ?? []) {
          const places = layout && placesOf(derivation, registry, layout, position);
          expect(new Set(places?.map(({ id }) => id)), route).toEqual(new Set(inputs));
        }
      }
    },
  );

  it.each(named)('%s: is of a part, and depends on all that its inputs are of', (_, each) => {
    const depended = [each.of, ...each.dependsOn];
    for (const id of depended) {
      const part = registry.parts.find(id ?? '');
      expect(part, id).toBeDefined();
      if (part !== undefined && each.family !== STEP)
        expect(areRelated(each.family, part.family), id).toBe(true);
    }
    for (const input of each.derivations.flatMap(({ inputs }) => inputs))
      expect(depended).toContain(registry.find(input)?.of);
  });

  it.each(named)('%s: is never worked out from itself', (_, each) => {
    const isReached = (from: Characteristic, seen: readonly string[]): boolean =>
      from.derivations
        .flatMap(({ inputs }) => inputs)
        .some((id) => {
          if (id === each.id || seen.includes(id)) return true;
          const input = registry.find(id);
          return input !== undefined && isReached(input, [...seen, id]);
        });
    expect(isReached(each, [])).toBe(false);
  });

  it.each(named.filter(([, each]) => each.derivations.length > 0))('%s: has a worked example', (_, each) => {
    expect(each.examples.length).toBeGreaterThan(0);
  });
});

describe('every part', () => {
  it.each(parts.map((part) => [part.id, part] as const))(
    '%s: is assembled from parts that are known',
    (_, part) => {
      for (const id of part.assembledFrom) expect(registry.parts.find(id), id).toBeDefined();
      expect(registry.parts.within(part)).toContain(part);
    },
  );

  it('goes by words of its own', () => {
    const words = parts.flatMap(wordsOf);
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  });
});

describe('every diameter', () => {
  const diameters = characteristics.filter(({ id }) => /_(diameter|bore)$/.test(id));

  it('is there to be tested', () => expect(diameters.length).toBeGreaterThanOrEqual(8));

  it.each(diameters.map((each) => [each.id, each] as const))(
    '%s brings its taper, and its out of round',
    (id, each) => {
      const formOf = (figure: string) =>
        characteristics.find(
          (other) =>
            other.figure === figure &&
            other.derivations.some(({ inputs }) => inputs.length === 1 && inputs[0] === id),
        );
      const taper = formOf('taper');
      expect(taper).toMatchObject({ family: each.family, quantity: 'length', onlyWithLimits: true });
      expect(taper?.derivations.map(({ inputs }) => inputs)).toEqual([[id]]);
      const outOfRound = formOf('out of round');
      // Shells are eccentric and relieved at the split: with shells in there is nothing round to judge.
      if (/^(main|rod)_bearing_bore$/.test(id)) expect(outOfRound).toBeUndefined();
      else
        expect(outOfRound).toMatchObject({ family: each.family, quantity: 'length', onlyWithLimits: true });
    },
  );
});

const worked = characteristics.flatMap((characteristic) =>
  characteristic.examples.map((example, index) => ({
    title: `${characteristic.id}, example ${index + 1}`,
    characteristic,
    example,
  })),
);

describe('a worked example comes out as printed', () => {
  it('there are some', () => expect(worked.length).toBeGreaterThan(10));

  it.each(worked)('$title ($example.source)', ({ characteristic, example }) => {
    const unit = unitOfExample(example.unit);
    const given = Object.keys(example.given);
    const derivation = characteristic.derivations.find(
      ({ inputs }) => inputs.length === given.length && inputs.every((id) => given.includes(id)),
    );
    const inputs = (derivation?.inputs ?? []).flatMap((id) => {
      const reading = example.given[id] ?? '';
      const isSeveral = typeof reading !== 'string' && !('rows' in reading);
      return gridsOfExample(reading, unit).map((grid) => ({
        grid,
        place: { id, position: WHOLE_ENGINE, reference: isSeveral ? `${id}[*]` : id },
      }));
    });
    const measured = derivation?.compute(
      inputs.map(({ grid }) => grid),
      {},
      inputs.map(({ place }) => place),
    );
    expect(measured).toBeDefined();
    if (measured === undefined) return;
    const resultUnit = unitOfExample(example.resultUnit ?? example.unit);
    expect(asWritten(measured.least.amount, resultUnit, example.least)).toBe(example.least);
    expect(asWritten(measured.greatest.amount, resultUnit, example.greatest)).toBe(example.greatest);
    expect(example.source).not.toBe('');
  });
});

describe('what a shop adds', () => {
  it('stands after ours, and one of the same id stands in place of ours', () => {
    const own = {
      label: 'own',
      quantity: 'length',
      family: ENGINE,
      parts: [],
      formula: undefined,
      units: new Map(),
      instrument: undefined,
      words: { above: undefined, below: undefined },
      after: undefined,
      places: { id: PLACE, formula: PLACE, after: PLACE },
    } as const;
    const found = registryWith([
      { ...own, id: 'cam_lift' },
      { ...own, id: 'crankshaft_end_play' },
    ]);
    expect(found.all.at(-1)?.id).toBe('cam_lift');
    expect(found.find('crankshaft_end_play')).toMatchObject({ label: 'own', standsForOurs: PLACE });
    expect(found.find('cam_lift')).not.toHaveProperty('standsForOurs');
    expect(found.all).toHaveLength(characteristics.length + 1);
    expect(found.ids()).toHaveLength(characteristics.length + 1);
  });
});
