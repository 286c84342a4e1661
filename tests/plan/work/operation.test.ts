import { describe, expect, it } from 'vitest';
import { registryWith } from '../../../src/characteristics/registry.ts';
import type { Row } from '../../../src/checks/judge/row.ts';
import { jobName, remedyOf } from '../../../src/plan/work/operation.ts';

const registry = registryWith([]);

/** Of a figure that is past its limit on a side. */
const remedyFor = (id: string, side: 'min' | 'max' = 'max'): string => {
  const characteristic = registry.find(id);
  const row = { characteristic, size: {}, judgement: { past: { side } } } as unknown as Row;
  return remedyOf(row, registry.parts.find(characteristic?.of ?? ''));
};

describe('what brings a figure back that is out', () => {
  it.each<readonly [string, readonly string[]]>([
    ['straighten', ['crankshaft_runout', 'camshaft_runout']],
    ['line bore', ['main_bore_alignment', 'main_housing_bore', 'main_housing_out_of_round']],
    ['resize', ['rod_housing_bore', 'rod_housing_taper']],
    ['surface', ['deck_flatness', 'deck_parallelism', 'head_flatness']],
    ['renew', ['ring_end_gap', 'ring_free_gap', 'ring_tension', 'ring_width', 'ring_radial_thickness']],
    ['renew', ['main_shell_thickness', 'piston_out_of_round', 'pump_tip_clearance']],
    ['choose', ['crankshaft_end_play', 'main_bearing_clearance', 'piston_clearance', 'rod_side_clearance']],
    ['choose', ['cam_bearing_clearance', 'lifter_clearance', 'piston_pin_clearance']],
    ['renew', ['valve_stem_clearance', 'ring_side_clearance', 'rocker_clearance', 'pump_body_clearance']],
    ['adjust', ['liner_protrusion', 'liner_protrusion_spread', 'liner_protrusion_step']],
    ['adjust', ['valve_lash_cold', 'valve_lash_hot', 'ignition_timing', 'injection_timing']],
    ['find the cause', ['turning_torque', 'piston_protrusion', 'deck_clearance']],
    ['machine or renew', ['crankshaft_flange_runout', 'main_journal_hardness', 'crank_stroke']],
  ])('is to %s: %s', (remedy, ids) => {
    expect(ids.map((id) => `${id} ${remedyFor(id)}`)).toEqual(ids.map((id) => `${id} ${remedy}`));
  });

  it('is of a clearance never what brings back its part', () => {
    const clearances = registry.all.filter(({ figure }) => figure === 'clearance').map(({ id }) => id);
    expect(clearances.length).toBeGreaterThan(5);
    expect(clearances.filter((id) => ['line bore', 'resize'].includes(remedyFor(id)))).toEqual([]);
  });

  it('is a file for a ring whose ends are too close, and for no other figure that is too small', () => {
    expect(remedyFor('ring_end_gap', 'min')).toBe('adjust');
    expect(remedyFor('ring_width', 'min')).toBe('renew');
  });
});

it.each([
  ['crankshaft', 'renew crankshaft'],
  ['main_journal', 'renew main journals'],
])('a job on the part %s is called %s', (id, name) => {
  const part = registry.parts.find(id);
  expect(part && jobName('renew', part)).toBe(name);
});
