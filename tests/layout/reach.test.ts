import { describe, expect, it } from 'vitest';
import { ENGINE, familyOf } from '../../src/layout/family.ts';
import { reach } from '../../src/layout/reach.ts';
import { layoutOf } from './someLayouts.ts';

const vee = layoutOf({
  cylinders: ['1L', '1R', '2L', '2R'],
  pins: new Map([
    ['1', ['1L', '1R']],
    ['2', ['2L', '2R']],
  ]),
  rings: ['top', 'second', 'oil'],
  valves: ['I', 'E'],
});

const FAMILIES = {
  engine: ENGINE,
  main: familyOf('main'),
  crankpin: familyOf('crankpin'),
  cylinder: familyOf('cylinder'),
  ring: familyOf('ring'),
};

type FamilyWord = keyof typeof FAMILIES;

function reached(from: FamilyWord, coordinates: readonly string[], to: FamilyWord, at?: string) {
  const position = vee.at(FAMILIES[from], coordinates);
  if (position === undefined) throw new Error(`no ${from} ${coordinates.join(' ')}`);
  const found = reach(vee, position, FAMILIES[to], at);
  return found.kind === 'positions' ? found.positions.map(({ name }) => name) : found.kind;
}

describe('what a name in a formula means', () => {
  it.each<readonly [FamilyWord, readonly string[], FamilyWord, string | undefined, unknown]>([
    ['cylinder', ['2L'], 'cylinder', undefined, ['2L']],
    ['cylinder', ['2L'], 'cylinder', '*', ['1L', '1R', '2L', '2R']],
    ['cylinder', ['2L'], 'cylinder', '1R', ['1R']],
    ['cylinder', ['2L'], 'cylinder', 'cylinder 1R', ['1R']],
    ['cylinder', ['1L'], 'cylinder', 'next', ['1R']],
    ['cylinder', ['2R'], 'cylinder', 'next', []],
    ['cylinder', ['1L'], 'cylinder', 'previous', []],
    ['cylinder', ['2L'], 'cylinder', 'previous', ['1R']],
    ['cylinder', ['2L'], 'cylinder', 'neighbours', ['1R', '2R']],
    ['cylinder', ['1L'], 'cylinder', 'neighbours', ['1R']],
    ['cylinder', ['2L'], 'cylinder', '9', 'unknown'],
    ['cylinder', ['2L'], 'crankpin', undefined, ['2']],
    ['cylinder', ['2L'], 'crankpin', '*', ['2']],
    ['cylinder', ['2L'], 'crankpin', '1', ['1']],
    ['cylinder', ['2L'], 'crankpin', 'next', 'other row'],
    ['crankpin', ['1'], 'cylinder', undefined, ['1L', '1R']],
    ['crankpin', ['1'], 'cylinder', '*', ['1L', '1R']],
    ['crankpin', ['1'], 'cylinder', '2L', ['2L']],
    ['engine', ['engine'], 'cylinder', '*', ['1L', '1R', '2L', '2R']],
    ['engine', ['engine'], 'cylinder', '2R', ['2R']],
    ['cylinder', ['2R'], 'engine', undefined, ['engine']],
    ['cylinder', ['1L'], 'main', undefined, 'unrelated'],
    ['cylinder', ['1L'], 'main', '*', 'unrelated'],
    ['cylinder', ['1L'], 'main', '3', ['3']],
    ['cylinder', ['1L'], 'ring', '*', ['1L top', '1L second', '1L oil']],
    ['cylinder', ['1L'], 'ring', 'top', ['1L top']],
    ['cylinder', ['1L'], 'ring', '2R top', ['2R top']],
    ['ring', ['1L', 'top'], 'ring', 'second', ['1L second']],
    ['ring', ['1L', 'top'], 'ring', 'next', ['1L second']],
    ['ring', ['1L', 'oil'], 'ring', 'next', []],
    ['engine', ['engine'], 'ring', 'top', ['1L top', '1R top', '2L top', '2R top']],
    ['crankpin', ['2'], 'ring', 'oil', ['2L oil', '2R oil']],
  ])('at %s %j a %s with [%s]', (from, coordinates, to, at, expected) => {
    expect(reached(from, coordinates, to, at)).toEqual(expected);
  });
});
