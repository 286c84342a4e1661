import { expect, test } from 'vitest';
import { callHere } from '../inProcess.ts';
import { atTheBench } from './bench.ts';

const FILES = {
  'saw/engine.yaml':
    'kind: engine\nname: Saw\nunits: { angle: deg }\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
  'saw/limits.yaml':
    'kind: limits\nsource: Invented.\nlimits: { intake_opening: { new: 5 deg to 13 deg } }\n',
  'saw/s.yaml':
    'kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings: [{ measure: intake_opening, conditions: { lift: 0.050 in }, at: { 1: 9 } }]\n',
};

const OVERLAP =
  'it is worked out where limits name it: write a limit on valve_overlap, and read intake_opening, exhaust_closing';
const SEPARATION =
  'it is worked out where limits name it: write a limit on lobe_separation, and read intake_closing, intake_opening, exhaust_opening, exhaust_closing';
const CHECK = 'tenths check shows what was measured';

test.each([
  ['explain', 'valve_overlap', OVERLAP],
  ['explain', 'lobe_separation', SEPARATION],
  ['trend', 'valve_overlap', OVERLAP],
  ['explain', 'cylinder_bore', CHECK],
  ['trend', 'cylinder_bore', CHECK],
])('%s of %s says how one comes by it', async (command, measure, help) => {
  const { stderr } = await atTheBench(FILES, (cwd) => callHere([command, measure, 'saw'], { cwd }));
  expect(stderr).toContain(help);
});
