import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { TODAY } from '../inProcess.ts';
import { projectFolder, type Ran, requireFreshBuild, SURROUNDINGS } from '../program.ts';

interface PermittedCall {
  readonly words: readonly string[];
  readonly cwd: string;
  readonly input: string;
}

/** Before a program: root stays root, who may enter the folders above the shop, but is held to what they permit. */
const HELD = process.getuid?.() === 0 ? ['setpriv', '--bounding-set=-dac_override,-dac_read_search'] : [];

/** Calls of the built program one after another, in a process that permissions hold: one for all, since each start takes long. */
export function calledAsPermitted(calls: readonly PermittedCall[]): readonly Ran[] {
  requireFreshBuild();
  const [first = '', ...rest] = [...HELD, process.execPath, '-e', CALLER, join(projectFolder, 'dist')];
  const { stdout, stderr } = spawnSync(first, rest, {
    input: JSON.stringify(calls),
    env: SURROUNDINGS,
    encoding: 'utf8',
  });
  if (stdout === '') throw new Error(stderr);
  return JSON.parse(stdout);
}

const CALLER = `
  const { Readable } = require('node:stream');
  const [, dist] = process.argv;
  const { run } = require(dist + '/run.cjs');
  const collecting = () => {
    let told = '';
    return { write: (text) => (told += text), told: () => told };
  };
  async function answer({ words, cwd, input }) {
    const [out, err] = [collecting(), collecting()];
    const exitCode = await run(words, {
      workingDirectory: cwd,
      environment: process.env,
      today: ${JSON.stringify(TODAY)},
      calculator: async () => require(dist + '/calculator.cjs').newCalculator(),
      out,
      err,
      input: () => Readable.from([Buffer.from(input)]),
    });
    return { stdout: out.told(), stderr: err.told(), exitCode };
  }
  (async () => {
    const answers = [];
    for (const call of JSON.parse(require('node:fs').readFileSync(0, 'utf8'))) answers.push(await answer(call));
    process.stdout.write(JSON.stringify(answers));
  })();
`;
