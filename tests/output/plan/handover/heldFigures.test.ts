import { expect, it } from 'vitest';
import { heldFigures } from '../../../../src/output/plan/handover/heldFigures.ts';
import { contextOf, jobCalled } from '../../../plan/planOf.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../../shopOf.ts';

it('asks a grinder to hold what the crankshaft has by itself, and no travel of a piston in its bore', () => {
  const pins =
    '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4960, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }';
  const files = {
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(`crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
crankpin_taper: { new: { max: 0.0005 } }
crank_throw: { new: 2.2470 to 2.2530 }
piston_travel: { new: 4.4942 to 4.5058 }`),
    'e/session.yaml': sessionOf('teardown', `${pins}\n${pins}`),
  };
  const { engine, registry } = contextOf(files);
  expect(heldFigures(jobCalled('grind crankpins', files), engine, registry)).toEqual([
    'hold crankpin taper at most 0.0005 in; crank throw 2.247 to 2.253 in',
  ]);
});
