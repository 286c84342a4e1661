import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Axis } from '../../src/layout/axis.ts';
import { ENGINE, type Family, familyOf, STEP } from '../../src/layout/family.ts';
import { Layout } from '../../src/layout/layout.ts';
import { WHOLE_ENGINE } from '../../src/layout/position.ts';
import { areRelated, neighbours, relate, relateOne, stepAlong } from '../../src/layout/relate.ts';
import { runs } from '../propertyRuns.ts';
import { drawnLayout, layoutOf } from './someLayouts.ts';

const vee = layoutOf({
  cylinders: ['1L', '1R', '2L', '2R'],
  pins: new Map([
    ['1', ['1L', '1R']],
    ['2', ['2L', '2R']],
  ]),
  rings: ['top', 'second', 'oil'],
  valves: ['I', 'E'],
});

const names = (from: string, family: Family, key: readonly string[]): readonly string[] | undefined => {
  const position = vee.at(familyOf(...(from.split(' × ') as Axis[])), key);
  if (position === undefined) throw new Error(`no ${from} ${key}`);
  return relate(vee, position, family)?.map(({ name }) => name);
};

describe('what belongs to a position', () => {
  it.each([
    ['cylinder', ['1R'], familyOf('crankpin'), ['1']],
    ['crankpin', ['2'], familyOf('cylinder'), ['2L', '2R']],
    ['crankpin', ['2'], familyOf('main'), ['2', '3']],
    ['main', ['1'], familyOf('crankpin'), ['1']],
    ['main', ['2'], familyOf('crankpin'), ['1', '2']],
    ['cylinder', ['1R'], familyOf('bank'), ['right']],
    ['bank', ['left'], familyOf('cylinder'), ['1L', '2L']],
    ['cylinder', ['1R'], familyOf('ring'), ['1R top', '1R second', '1R oil']],
    ['cylinder × ring', ['1R', 'top'], familyOf('cylinder'), ['1R']],
    ['cylinder × ring', ['1R', 'top'], familyOf('valve'), ['1R I', '1R E']],
    ['cylinder × ring', ['1R', 'top'], familyOf('crankpin'), ['1']],
    ['crankpin', ['1'], familyOf('valve'), ['1L I', '1L E', '1R I', '1R E']],
    ['cylinder × ring', ['1R', 'top'], ENGINE, ['engine']],
    ['engine', ['engine'], familyOf('main'), ['1', '2', '3']],
    ['cylinder', ['1R'], familyOf('main'), undefined],
    ['main', ['2'], familyOf('ring'), undefined],
    ['engine', ['engine'], STEP, undefined],
  ] as const)('of %s %s', (from, key, family, expected) => {
    expect(names(from, family, key)).toEqual(expected);
  });

  describe('a lobe', () => {
    const lobes = ['1I', '1E', 'E 2', 'pump'];
    const layout = new Layout({
      names: new Map<Axis, readonly string[]>([
        ['cylinder', ['1', '2']],
        ['lobe', lobes],
      ]),
      onHolder: new Map([['valve', new Map(['1', '2'].map((cylinder) => [cylinder, ['I', 'E']]))]]),
    });
    const [LOBE, VALVE, CYLINDER] = [familyOf('lobe'), familyOf('valve'), familyOf('cylinder')];
    const related = (from: Family, key: readonly string[], to: Family) => {
      const position = layout.at(from, key);
      return position && relate(layout, position, to)?.map(({ name }) => name);
    };

    it('belongs to the valve whose name it has, however that is written, and to its cylinder', () => {
      expect(lobes.map((lobe) => related(LOBE, [lobe], VALVE))).toEqual([['1 I'], ['1 E'], ['2 E'], []]);
      expect(related(LOBE, ['1E'], CYLINDER)).toEqual(['1']);
    });

    it('is the one of its valve, and of a cylinder there are several', () => {
      expect(related(VALVE, ['1', 'E'], LOBE)).toEqual(['1E']);
      expect(related(VALVE, ['2', 'I'], LOBE)).toEqual([]);
      expect(related(CYLINDER, ['1'], LOBE)).toEqual(['1I', '1E']);
    });
  });

  it('of a crankshaft with fewer mains is not counted off', () => {
    const layout = new Layout({
      names: new Map<Axis, readonly string[]>([
        ['main', ['1', '2', '3']],
        ['crankpin', ['1', '2', '3', '4']],
      ]),
    });
    const [pin] = layout.positionsOf(familyOf('crankpin'));
    expect(pin && relate(layout, pin, familyOf('main'))).toEqual([]);
  });

  it('is one position where one is asked for, and none of several', () => {
    const pin = vee.at(familyOf('crankpin'), ['1']);
    const cylinder = vee.at(familyOf('cylinder'), ['1L']);
    expect(cylinder && relateOne(vee, cylinder, familyOf('crankpin'))).toBe(pin);
    expect(pin && relateOne(vee, pin, familyOf('cylinder'))).toBeUndefined();
  });
});

it('neighbours stand on both sides along the last axis, and none beyond the ends', () => {
  const of = (family: Family, key: readonly string[]) => {
    const position = vee.at(family, key);
    return position && neighbours(vee, position).map(({ name }) => name);
  };
  expect(of(familyOf('main'), ['2'])).toEqual(['1', '3']);
  expect(of(familyOf('main'), ['1'])).toEqual(['2']);
  expect(of(familyOf('ring'), ['2L', 'top'])).toEqual(['2L second']);
});

const FAMILIES: readonly Family[] = [
  familyOf('main'),
  familyOf('crankpin'),
  familyOf('cylinder'),
  familyOf('ring'),
  familyOf('valve'),
  familyOf('bank'),
  ENGINE,
];

describe('in any layout', () => {
  const family = fc.constantFrom(...FAMILIES);

  it('a position leads to itself, and there and back leads to where it began', () => {
    fc.assert(
      fc.property(drawnLayout, family, family, (drawn, from, to) => {
        const layout = layoutOf(drawn);
        expect(areRelated(from, to)).toBe(areRelated(to, from));
        for (const position of layout.positionsOf(from)) {
          expect(relate(layout, position, from)).toEqual([position]);
          const others = relate(layout, position, to);
          expect(others === undefined).toBe(!areRelated(from, to));
          for (const other of others ?? []) expect(relate(layout, other, from)).toContain(position);
        }
      }),
      runs(300),
    );
  });

  it('what is one to one is the identity there and back', () => {
    fc.assert(
      fc.property(drawnLayout, (drawn) => {
        const layout = layoutOf(drawn);
        for (const cylinder of layout.positionsOf(familyOf('cylinder'))) {
          const pin = relateOne(layout, cylinder, familyOf('crankpin'));
          expect(pin).toBeDefined();
          const back = pin && relate(layout, pin, familyOf('cylinder'));
          expect(back?.length).toBe(drawn.cylinders.length / drawn.pins.size);
          for (const ring of relate(layout, cylinder, familyOf('ring')) ?? [])
            expect(relateOne(layout, ring, familyOf('cylinder'))).toBe(cylinder);
          const bank = relateOne(layout, cylinder, familyOf('bank'));
          expect(bank && relate(layout, bank, familyOf('cylinder'))).toContain(cylinder);
        }
        for (const valve of layout.positionsOf(familyOf('valve'))) {
          const cylinder = relateOne(layout, valve, familyOf('cylinder'));
          expect(cylinder && relate(layout, cylinder, familyOf('valve'))).toContain(valve);
        }
      }),
      runs(300),
    );
  });

  it('one step along and one back is where it began', () => {
    fc.assert(
      fc.property(drawnLayout, family, (drawn, of) => {
        const layout = layoutOf(drawn);
        for (const position of layout.positionsOf(of)) {
          const [next] = stepAlong(layout, position, 1);
          if (next !== undefined) expect(stepAlong(layout, next, -1)).toEqual([position]);
        }
      }),
      runs(300),
    );
  });

  it('everything is of the whole engine, and the whole engine of everything', () => {
    fc.assert(
      fc.property(drawnLayout, family, (drawn, of) => {
        const layout = layoutOf(drawn);
        expect(relate(layout, WHOLE_ENGINE, of)).toEqual(layout.positionsOf(of));
        for (const position of layout.positionsOf(of))
          expect(relate(layout, position, ENGINE)).toEqual([WHOLE_ENGINE]);
      }),
      runs(300),
    );
  });
});
