import { expect, it } from 'vitest';
import { atTheBench } from '../../cli/bench.ts';
import { callHere } from '../../inProcess.ts';

const FILES = {
  'warm/engine.yaml':
    'kind: engine\nname: A warm piston\nlayout: { cylinders: 2 }\nmaterials: { pistons: aluminium }\n',
  'warm/limits.yaml':
    'kind: limits\nsource: Invented.\nlimits:\n  piston_diameter: { new: { min: 4.1205, max: 4.1215 } }\n',
  'warm/rebuild.yaml': `kind: session
stage: rebuild
date: 2026-02-03
temperature: 35 degC
readings:
  - { measure: piston_diameter, with: mic-3-4, at: { 1: 4.1216, 2: 4.1217 } }
`,
};

const printed = (...words: readonly string[]): Promise<string> =>
  atTheBench(FILES, async (cwd) => (await callHere(['check', 'warm', ...words], { cwd })).stdout);

// 4.1216 − 4.1216 × (20.75 − 11.5)e-6 × 15 = 4.12103
it('what was taken to another temperature has the digits that were written, in a table and folded into a line', async () => {
  expect(await printed('--detail')).toMatch(/^ {2}1 +4\.1210 .*\n {2}2 +4\.1211 /m);
  expect(await printed()).toContain('piston diameter 1, 2  4.1210 to 4.1211 in  ok');
});
