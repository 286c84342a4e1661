import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checkStep } from '../../../src/bench/scaffold/ciJob.ts';
import { projectFolder } from '../../program.ts';
import { git } from '../../shell/gitShop.ts';
import { benchFolder } from '../calling.ts';
import { INSTALLS, putProgram, runSteps } from './runSteps.ts';

const bench = benchFolder();
const own = (path: string): string => join(projectFolder, path);
const read = (path: string): unknown => parse(readFileSync(own(path), 'utf8'));

const putShop = (session: string): void =>
  bench.put({
    'shop/shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'shop/engines/pump/engine.yaml':
      'kind: engine\nname: Pump\nlayout: { mains: 2, crankpins: 1, cylinders: 1 }\n',
    'shop/engines/pump/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits: { crankshaft_end_play: { new: 0.006 to 0.013 } }\n',
    'shop/engines/pump/teardown.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, value: ${session} }]\n`,
  });

describe('the action', () => {
  const { runs, inputs } = read('action.yml') as {
    runs: { using: string; steps: { run: string; shell: string; env?: Record<string, string> }[] };
    inputs: Record<string, { default: string }>;
  };

  /** The action where a runner would have unpacked it, with what its build makes. */
  function runAction(npm: string) {
    const action = join(bench.folder(), 'action');
    mkdirSync(action);
    for (const name of ['bin', 'dist', 'schemas', 'package.json']) symlinkSync(own(name), join(action, name));
    putProgram(bench, 'programs/npm', npm);
    return runSteps(bench, runs.steps, { GITHUB_ACTION_PATH: action, SHOP: 'shop' });
  }

  it('has a step for bash alone, with what a caller says in the environment', () => {
    expect(runs).toMatchObject({ using: 'composite', steps: [{ shell: 'bash' }, { shell: 'bash' }] });
    for (const { run } of runs.steps) expect(run).not.toContain('${{');
    expect(runs.steps[1]?.env?.SHOP).toMatch(/^\$\{\{ inputs\.shop \}\}$/);
    expect(inputs.shop?.default).toBe('.');
  });

  it('checks as the job does that init --ci writes', () => {
    expect(runs.steps[1]?.run).toBe(checkStep('node "$GITHUB_ACTION_PATH/bin/tenths.cjs" check "$SHOP"'));
  });

  it.each([
    ['where all is well', '0.009', 'exit 0', true],
    ['where a reading is out', '0.019', 'exit 0', true],
    ['where a document cannot be trusted', '"0.009 furlong"', 'exit 0', false],
    ['where its packages cannot be installed', '0.009', 'exit 1', false],
  ])('ends as it should %s', (_, value, npm, green) => {
    putShop(value);
    const ran = runAction(npm);
    expect(ran.green, ran.log).toBe(green);
    expect(ran.summary.includes('Pump (shop/engines/pump)')).toBe(npm === 'exit 0');
    expect(/^::error file=shop\/engines\/pump\/teardown.yaml,/m.test(ran.log)).toBe(
      value === '0.019' || value.includes('furlong'),
    );
  });
});

describe('the hook for pre-commit', () => {
  const [hook, ...others] = read('.pre-commit-hooks.yaml') as Record<string, unknown>[];

  it('says all that its runner asks for, and no more', () => {
    expect(others).toEqual([]);
    expect(hook).toMatchObject({ id: 'tenths', language: 'script', pass_filenames: false });
    expect(Object.keys(hook ?? {}).sort()).toEqual([
      'description',
      'entry',
      'files',
      'id',
      'language',
      'minimum_pre_commit_version',
      'name',
      'pass_filenames',
    ]);
    // The runner's patterns are Python's, which take flags at their start.
    const files = new RegExp(String(hook?.files).replace('(?i)', ''), 'i');
    expect(['a.yaml', 'b/c.YML', 'd.yaml.bak', 'e.txt'].map((path) => files.test(path))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(statSync(own(String(hook?.entry))).mode & 0o100).toBe(0o100);
  });

  /** As its runner does: by its path in this repository, from the top of the shop's. */
  const commit = (value: string) => {
    putShop(value);
    const cwd = join(bench.folder(), 'shop');
    git(cwd, 'init', '--quiet');
    git(cwd, 'add', '.');
    return spawnSync(own(String(hook?.entry)), { cwd, encoding: 'utf8' });
  };

  it.each([
    ['passes where all is well', '0.009', 0],
    ['passes where a reading is out', '0.019', 0],
    ['stops where a document cannot be trusted', '"0.009 furlong"', 1],
  ])('%s', (_, value, status) => {
    bench.put({ 'shop/.gitignore': 'node_modules\n' });
    putProgram(bench, 'install', INSTALLS);
    spawnSync(join(bench.folder(), 'install'), { cwd: join(bench.folder(), 'shop') });
    expect(commit(value)).toMatchObject({ status });
  });

  it('stops where the program is not there', () => {
    putProgram(bench, 'shop/node_modules/.bin/tenths', 'exit 127');
    expect(commit('0.009')).toMatchObject({ status: 1 });
  });
});
