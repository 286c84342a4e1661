import { describe, expect, test } from 'vitest';
import { fraction } from '../../../src/quantity/fraction.ts';
import { loadsAfter, type PassLoad } from '../../../src/torque/fasteners/jointLoads.ts';
import { lubricationNamed } from '../../../src/torque/fasteners/lubrication.ts';
import type { Joint } from '../../../src/torque/joint.ts';
import type { ResolvedAction, TightenStep } from '../../../src/torque/plan.ts';
import { engineOf } from '../../documents/engineOf.ts';

/** Stretches over 5 in of its stress area: 1/2-13, so that one turn takes up 1/13 in. */
function joint(): Joint {
  const [document] = engineOf({
    'torque/caps.yaml':
      'kind: torque\njoint: main caps\nfasteners: { names: [a, b], thread: 1/2-13, grade: 8, length: 5 in }\nlubricant: oil\npasses: [{ to: 20 }]\nsource: Invented.\n',
  }).sequences;
  if (document === undefined) throw new Error('no sequence');
  return document.joint;
}

const BOLT = joint();

const step = (action: ResolvedAction, fasteners: readonly string[] = ['a', 'b']): TightenStep => ({
  kind: 'tighten',
  pass: 1,
  action,
  fasteners,
});
const at = (least: number, greatest = least) => ({ least: fraction(least), greatest: fraction(greatest) });
const turn = (degrees: number, greatest?: number): ResolvedAction => ({
  kind: 'turn',
  angle: at(degrees, greatest),
});
const SNUG: ResolvedAction = { kind: 'to', torque: at(20) };

const loads = (...steps: readonly TightenStep[]): readonly (PassLoad | undefined)[] =>
  loadsAfter(steps, BOLT);

/** Newtons for a degree: the pitch over 360 takes up length / (area × modulus), the clamped parts not giving. */
const [section] = BOLT.sections;
const A_DEGREE =
  (0.0254 / 13 / 360) * (((section?.areaM2 ?? 0) * 206.84271879504e9) / (section?.lengthM ?? 1));

describe('the load of a bolt that is turned', () => {
  const snugN = 20 / (0.18 * 0.0127);

  test('is that of the snug torque and of the turn', () => {
    const [snug, turned] = loads(step(SNUG), step(turn(30)));
    expect(snug?.loadN).toBeCloseTo(snugN, 3);
    expect(turned?.loadN).toBeCloseTo(snugN + 30 * A_DEGREE, 0);
    expect(turned?.beyondYield).toBe(false);
  });

  test('a second turn adds to the first', () => {
    const [, , turned] = loads(step(SNUG), step(turn(20)), step(turn(15)));
    expect(turned?.loadN).toBeCloseTo(snugN + 35 * A_DEGREE, 0);
  });

  test('a turn between two angles counts in the middle', () => {
    const [, turned] = loads(step(SNUG), step(turn(20, 40)));
    expect(turned?.loadN).toBeCloseTo(snugN + 30 * A_DEGREE, 0);
  });

  test('at least and at most it is what the snug torque scatters, and the turn comes on top', () => {
    const { scatter } = lubricationNamed('oil');
    const [, turned] = loads(step(SNUG), step(turn(30)));
    expect(turned?.leastN).toBeCloseTo(snugN * (1 - scatter) + 30 * A_DEGREE, 0);
    expect(turned?.greatestN).toBeCloseTo(snugN * (1 + scatter) + 30 * A_DEGREE, 0);
  });

  test('of each bolt is its own: another that was turned does not raise it', () => {
    const [, , turned] = loads(step(SNUG), step(turn(20), ['b']), step(turn(15), ['a']));
    expect(turned?.loadN).toBeCloseTo(snugN + 15 * A_DEGREE, 0);
  });

  test('cannot be told without a snug torque, nor after it was loosened', () => {
    expect(loads(step(turn(30)))).toEqual([undefined]);
    expect(loads(step(SNUG), step({ kind: 'loosen' }), step(turn(30)))[2]).toBeUndefined();
  });
});
