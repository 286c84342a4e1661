import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { SHORT_RUN } from '../../../src/shell/process/compiler.ts';

const built = fileURLToPath(new URL('../../../dist/run.cjs', import.meta.url));

/** As the program loads it: under the same options of V8, in a process of its own. */
const LOAD = `
  const { readFileSync } = require('node:fs');
  const { Script } = require('node:vm');
  for (const option of ${JSON.stringify(SHORT_RUN)}) require('node:v8').setFlagsFromString(option);
  const file = process.argv[1];
  const source = readFileSync(file, 'latin1');
  const load = (cachedData) => new Script(source, { filename: file, cachedData }).cachedDataRejected;
  const good = readFileSync(file + '.cache');
  const spoiled = Buffer.from(good).fill(0, 0, 16);
  process.stdout.write(JSON.stringify({ good: load(good), spoiled: load(spoiled), ascii: !/[^\\x00-\\x7f]/.test(source) }));
`;

it('the build keeps compiled code that this node takes, and of ASCII alone', () => {
  const { stdout, stderr } = spawnSync(process.execPath, ['-e', LOAD, built], { encoding: 'utf8', env: {} });
  expect(stderr).toBe('');
  expect(JSON.parse(stdout)).toEqual({ good: false, spoiled: true, ascii: true });
});
