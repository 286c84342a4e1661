import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { buildSync } from 'esbuild';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SHORT_RUN } from '../../../src/shell/process/compiler.ts';
import { keptCodeOf, needsKeptCode } from '../../../src/shell/process/keptCode.ts';
import { projectFolder, type Ran } from '../../program.ts';

let folder = '';
let loader = '';

beforeAll(() => {
  loader = join(realpathSync(mkdtempSync(join(tmpdir(), 'tenths loader '))), 'keptCode.cjs');
  const source = join(projectFolder, 'src/shell/process/keptCode.ts');
  buildSync({ entryPoints: [source], bundle: true, format: 'cjs', platform: 'node', outfile: loader });
});

afterAll(() => rmSync(dirname(loader), { recursive: true }));

// A copy of the program, since what was kept of it is spoiled here, and a home of its own.
beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'tenths compiled ')));
  for (const part of ['bin/tenths.cjs', 'dist']) {
    cpSync(join(projectFolder, part), join(folder, part), { recursive: true });
  }
});

afterEach(() => rmSync(folder, { recursive: true }));

function runCopy(environment: Readonly<Record<string, string>> = {}): Ran {
  const words = [
    join(folder, 'bin/tenths.cjs'),
    'check',
    join(projectFolder, 'examples/engines/reservoir-pump-2'),
  ];
  const env = { HOME: folder, ...environment };
  const { stdout, stderr, status } = spawnSync(process.execPath, words, { encoding: 'utf8', env });
  return { stdout, stderr, exitCode: status };
}

/** What node did with the code that it had kept: it tells so where the other output goes. */
const told = (): string => {
  const { stdout, stderr } = runCopy({ NODE_DEBUG_NATIVE: 'COMPILE_CACHE' });
  return stdout + stderr;
};

const program = (): string => join(folder, 'dist/run.cjs');

/** The file of compiled code, by the build or by node. */
function keptFile(): string {
  if (needsKeptCode) return keptCodeOf(program());
  const cache = join(folder, '.cache/tenths');
  const found = readdirSync(cache, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  expect(found).toHaveLength(1);
  return join(found[0]?.parentPath ?? '', found[0]?.name ?? '');
}

/** Whether V8 took the code that the build kept, as the program loads it; undefined where it was not even offered. */
function isKeptTaken(version = process.version): boolean | undefined {
  const script = `
    Object.defineProperty(process, 'version', { value: ${JSON.stringify(version)} });
    for (const option of ${JSON.stringify(SHORT_RUN)}) require('node:v8').setFlagsFromString(option);
    const { cachedDataRejected } = require(process.argv[1]).loadFromKeptCode(process.argv[2]).script;
    process.stdout.write(String(cachedDataRejected));`;
  const { stdout, stderr } = spawnSync(process.execPath, ['-e', script, loader, program()], {
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  return { false: true, true: false }[stdout];
}

describe('compiled code', () => {
  it('is taken at the second start', () => {
    runCopy();
    if (needsKeptCode) expect(isKeptTaken()).toBe(true);
    else expect(told()).toMatch(/run\.cjs was accepted/);
  });

  it.each([0, 0.001, 0.3, 0.6, 1])('that was spoiled at %d of its length is never run', (at) => {
    const wanted = runCopy();
    const file = keptFile();
    const bytes = readFileSync(file);
    const place = Math.floor(at * (bytes.length - 1));
    bytes[place] = (bytes[place] ?? 0) ^ 0x10;
    writeFileSync(file, bytes);
    expect(runCopy()).toEqual(wanted);
    writeFileSync(file, bytes);
    if (needsKeptCode) expect(isKeptTaken()).toBeUndefined();
    else expect(told()).not.toMatch(/run\.cjs was accepted/);
  });

  it.each([0, 100_000])('of which only %d bytes are there is never run', (length) => {
    const wanted = runCopy();
    writeFileSync(keptFile(), readFileSync(keptFile()).subarray(0, length));
    expect(runCopy()).toEqual(wanted);
  });

  it.runIf(needsKeptCode)('that another version of node made is never run', () => {
    expect(isKeptTaken('v20.0.0')).toBeUndefined();
  });

  it('of a program of the same length is never run', () => {
    runCopy();
    writeFileSync(program(), readFileSync(program(), 'latin1').replaceAll('remark', 'notice'));
    const { stdout } = runCopy();
    expect(stdout).toMatch(/\d+ notices/);
  });

  it('is of ASCII alone, so that the source is read without being decoded', () => {
    expect(/[^\x00-\x7f]/.test(readFileSync(program(), 'latin1'))).toBe(false);
  });
});
