import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { buildSync } from 'esbuild';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SHORT_RUN } from '../../../src/shell/process/compiler.ts';
import { projectFolder, type Ran, runLine } from '../../program.ts';
import { isLong } from '../../propertyRuns.ts';

let folder = '';
let pattern = '';
let loader = '';
let wanted: Ran;

beforeAll(() => {
  loader = join(realpathSync(mkdtempSync(join(tmpdir(), 'tenths loader '))), 'compiled.cjs');
  const source = join(projectFolder, 'src/shell/process/compiled.ts');
  buildSync({ entryPoints: [source], bundle: true, format: 'cjs', platform: 'node', outfile: loader });
});

// A copy of the program, since it is changed here, and a home of its own, in which one call has kept what it compiled.
beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'tenths compiled ')));
  for (const part of ['bin/tenths.cjs', 'dist']) {
    cpSync(join(projectFolder, part), join(folder, part), { recursive: true });
  }
  wanted = runCopy();
  pattern = `${folder} as it was`;
  cpSync(folder, pattern, { recursive: true });
});

// At the same path, by which compiled code is found.
beforeEach(() => {
  rmSync(folder, { recursive: true });
  cpSync(pattern, folder, { recursive: true });
});

afterAll(() => {
  for (const made of [dirname(loader), folder, pattern]) rmSync(made, { recursive: true });
});

const SHOP = join(projectFolder, 'tests/cases/judging/manual-table');

function runCopy(...options: readonly string[]): Ran {
  const words = [join(folder, 'bin/tenths.cjs'), 'check', SHOP, '--no-cache', ...options];
  const { stdout, stderr, status } = spawnSync(process.execPath, words, {
    encoding: 'utf8',
    env: { HOME: folder },
  });
  return { stdout, stderr, exitCode: status };
}

const program = (): string => join(folder, 'dist/checkAlone.cjs');
const cache = (): string => join(folder, '.cache/tenths');

function keptFile(): string {
  const names = readdirSync(cache()).filter((name) => name.endsWith('.compiled'));
  expect(names).toEqual([expect.stringMatching(/^check-[0-9a-f]{8}\.compiled$/)]);
  return join(cache(), names[0] ?? '');
}

/** Whether V8 takes what is kept, as the program loads it. */
function isTaken(version = process.version): boolean {
  const script = `
    Object.defineProperty(process, 'version', { value: ${JSON.stringify(version)} });
    for (const option of ${JSON.stringify(SHORT_RUN)}) require('node:v8').setFlagsFromString(option);
    process.stdout.write(String(require(process.argv[1]).loadCompiled(process.argv[2], process.argv[3]).isKept));`;
  const { stdout, stderr } = spawnSync(process.execPath, ['-e', script, loader, program(), keptFile()], {
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  return stdout === 'true';
}

it('has less to take in for check, whose file holds no other command', () => {
  const holds = (file: string, source: string) =>
    readFileSync(join(projectFolder, 'dist', file), 'latin1').includes(`"src/cli/${source}.ts"(){`);
  const inCheck = ['check/check', 'check/watch', 'check/engineChecker'];
  const inOthers = ['record/record', 'plan/plan', 'report/report', 'gather/gather', 'explain/explain'];
  expect([...inCheck, ...inOthers].filter((each) => !holds('run.cjs', each))).toEqual([]);
  expect([...inCheck, ...inOthers].filter((each) => holds('checkAlone.cjs', each))).toEqual(inCheck);
});

describe('compiled code', () => {
  it('is taken at the second start, and not by another version of node', () => {
    expect(isTaken()).toBe(true);
    expect(isTaken('v20.0.0')).toBe(false);
  });

  it('grows with what a call runs more, and stays as it is while none does', () => {
    rmSync(cache(), { recursive: true });
    runCopy('--help');
    const small = statSync(keptFile()).size;
    // One call in eight looks, as chance has it: that none of a hundred does happens once in 600,000 times.
    for (let calls = 0; calls < 100 && statSync(keptFile()).size === small; calls++) runCopy();
    const grown = readFileSync(keptFile());
    expect(grown.length).toBeGreaterThan(1.5 * small);
    expect(isTaken()).toBe(true);
    runCopy();
    expect(readFileSync(keptFile()).equals(grown)).toBe(true);
  });

  it.each(isLong ? [0, 0.001, 0.3, 0.6, 1] : [0, 0.6])(
    'that was spoiled at %d of its length is never run',
    (at) => {
      const file = keptFile();
      const bytes = readFileSync(file);
      const place = Math.floor(at * (bytes.length - 1));
      bytes[place] = (bytes[place] ?? 0) ^ 0x10;
      writeFileSync(file, bytes);
      expect(isTaken()).toBe(false);
      expect(runCopy()).toEqual(wanted);
      expect(isTaken()).toBe(true);
    },
  );

  it.each(isLong ? [0, 100_000] : [100_000])('of which only %d bytes are there is never run', (length) => {
    writeFileSync(keptFile(), readFileSync(keptFile()).subarray(0, length));
    expect(isTaken()).toBe(false);
    expect(runCopy()).toEqual(wanted);
  });

  it('of a program of the same length is never run', () => {
    writeFileSync(program(), readFileSync(program(), 'latin1').replaceAll('remark', 'notice'));
    const { stdout } = runCopy();
    expect(stdout).toMatch(/\d+ notices/);
  });

  it('is whole when several runs keep it at once', async () => {
    rmSync(cache(), { recursive: true });
    const line = `"${process.execPath}" "${join(folder, 'bin/tenths.cjs')}" check "${SHOP}"`;
    const runs = Array.from({ length: 3 }, () =>
      runLine(line, { cwd: folder, env: { XDG_CACHE_HOME: join(folder, '.cache') } }),
    );
    const [first, ...others] = await Promise.all(runs);
    for (const other of others) expect(other).toEqual(first);
    expect(isTaken()).toBe(true);
  });

  it('fills a dozen files at most, and what killed runs left goes first', () => {
    const kept = keptFile();
    for (let number = 1; number <= 14; number++) {
      const other = join(cache(), `part-0000000a.compiled.${number}`);
      writeFileSync(other, '');
      utimesSync(other, number, number);
    }
    writeFileSync(kept, '');
    runCopy();
    expect(readdirSync(cache())).toHaveLength(12);
    expect(readdirSync(cache())).not.toContain('part-0000000a.compiled.3');
    expect(statSync(kept).size).toBeGreaterThan(100_000);
  });

  it('is of ASCII alone, so that the source is read without being decoded', () => {
    expect(/[^\x00-\x7f]/.test(readFileSync(program(), 'latin1'))).toBe(false);
  });
});
