import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Family, familyOf } from '../../src/layout/family.ts';
import { Layout } from '../../src/layout/layout.ts';
import { fullName } from '../../src/layout/position.ts';
import { findPosition, readKey } from '../../src/layout/readKey.ts';
import { drawnLayout, givenOf, layoutOf } from './someLayouts.ts';

const six = new Layout({
  ...givenOf({
    cylinders: ['1', '2', '3', '11'],
    pins: new Map([['1', ['1', '2', '3', '11']]]),
    rings: ['top', 'second', 'oil'],
    valves: ['I', 'E1', 'E2'],
  }),
  labels: new Map([['cylinder', new Map([['3', 'flywheel end']])]]),
});
const numbered = layoutOf({
  cylinders: ['1', '2', '3'],
  pins: new Map([['1', ['1', '2', '3']]]),
  rings: ['1', '2'],
  valves: ['I', 'E'],
});

const [RING, VALVE, CYLINDER] = [familyOf('ring'), familyOf('valve'), familyOf('cylinder')];

const read = (layout: Layout, family: Family, key: string): unknown => {
  const meaning = readKey(layout, family, key);
  return meaning.kind === 'coordinates' ? meaning.coordinates.map((name) => name ?? null) : meaning.kind;
};

describe('a key', () => {
  it.each([
    [six, RING, '3 top', ['3', 'top']],
    [six, RING, 'top 3', ['3', 'top']],
    [six, RING, 'cylinder 3 top ring', ['3', 'top']],
    [six, RING, 'cylinder 3 ring top', ['3', 'top']],
    [six, RING, 'flywheel end top', ['3', 'top']],
    [six, RING, '3', ['3', null]],
    [six, RING, 'top', [null, 'top']],
    [six, RING, 'ring top', [null, 'top']],
    [six, RING, '11', ['11', null]],
    [six, RING, 'third', 'unknown'],
    [six, RING, '3 3', 'unknown'],
    [six, VALVE, '1E1', ['1', 'E1']],
    [six, VALVE, '2E2', ['2', 'E2']],
    [six, VALVE, 'E12', ['2', 'E1']],
    [six, VALVE, '1 E1', ['1', 'E1']],
    [six, CYLINDER, 'cylinder 3', ['3']],
    [six, CYLINDER, 'flywheel end', ['3']],
    [numbered, RING, '1', 'unclear'],
    [numbered, RING, '1 2', 'unclear'],
    [numbered, RING, 'cylinder 1', ['1', null]],
    [numbered, RING, 'ring 1', [null, '1']],
    [numbered, RING, 'cylinder 1 ring 2', ['1', '2']],
    [numbered, RING, 'ring 2 cylinder 1', ['1', '2']],
    [numbered, RING, '3', ['3', null]],
  ])('%#: %s', (layout, family, key, expected) => expect(read(layout, family, key)).toEqual(expected));

  it('adds to what is known already', () => {
    expect(readKey(numbered, RING, '2', ['1', undefined])).toEqual({
      kind: 'coordinates',
      coordinates: ['1', '2'],
    });
  });
});

it('every position is found by its name, by its whole name, and by its coordinates as they are written', () => {
  fc.assert(
    fc.property(drawnLayout, fc.constantFrom(RING, VALVE, CYLINDER), (drawn, family) => {
      const layout = layoutOf(drawn);
      for (const position of layout.positionsOf(family)) {
        expect(findPosition(layout, family, position.name)).toBe(position);
        expect(findPosition(layout, family, fullName(position))).toBe(position);
        expect(layout.at(family, position.coordinates)).toBe(position);
        expect(layout.withKey(family, position.key)).toBe(position);
      }
    }),
  );
});

it('positions print as a person says them', () => {
  const [top] = six.positionsOf(RING);
  const [valve] = six.positionsOf(VALVE);
  const [first] = numbered.positionsOf(RING);
  expect(top && [top.name, fullName(top)]).toEqual(['1 top', 'cylinder 1 top ring']);
  expect(valve && [valve.name, fullName(valve)]).toEqual(['1 I', 'cylinder 1 valve I']);
  expect(first && [first.name, fullName(first)]).toEqual(['cylinder 1 ring 1', 'cylinder 1 ring 1']);
});
