import { describe, expect, it } from 'vitest';
import { type Family, familyOf } from '../../src/layout/family.ts';
import { positionMeant } from '../../src/layout/meant.ts';
import { layoutOf } from './someLayouts.ts';

/** A vee of four with two rods on each pin, named by bank. */
const vee = layoutOf({
  cylinders: ['1L', '1R', '2L', '2R'],
  pins: new Map([
    ['1', ['1L', '1R']],
    ['2', ['2L', '2R']],
  ]),
  rings: ['top', 'oil'],
  valves: ['I', 'E'],
});
const [MAIN, PIN, CYLINDER, RING] = [
  familyOf('main'),
  familyOf('crankpin'),
  familyOf('cylinder'),
  familyOf('cylinder', 'ring'),
];
const all = (family: Family): readonly string[] => vee.positionsOf(family).map(({ name }) => name);

describe('a position that an engine has not', () => {
  it.each<[text: string, family: Family, meant: string | undefined]>([
    ['crank pin 2', PIN, 'did you mean 2?'],
    ['Pin 2', PIN, 'did you mean 2?'],
    ['cyl. 2L', PIN, 'did you mean 2?'],
    ['rod 1R', PIN, 'did you mean 1?'],
    ['crank pin 2', CYLINDER, 'did you mean 2L or 2R?'],
    ['cyl 1L', CYLINDER, 'did you mean 1L?'],
    ['main journal 3', MAIN, 'did you mean 3?'],
    ['cyl 2R', RING, 'did you mean 2R top or 2R oil?'],
    ['2l', CYLINDER, 'did you mean 2L?'],
    // Nothing is near: what is there is said by who asks.
    ['main journal 9', MAIN, undefined],
    ['cyl 7', CYLINDER, undefined],
    ['flywheel 2', MAIN, undefined],
  ])('%s', (text, family, meant) => {
    expect(positionMeant(text, vee, family, all(family))).toBe(meant);
  });

  it('is taken only for one of those that may be meant', () => {
    expect(positionMeant('crank pin 2', vee, CYLINDER, ['1L', '2R'])).toBe('did you mean 2R?');
  });
});
