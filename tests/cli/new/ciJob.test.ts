import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { parsedMarkdown } from '../../output/escape/readMarkdown.ts';
import { builtProgram, quoted } from '../../program.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();
const at = (path: string): string => join(bench.folder(), path);
const JOB = '.github/workflows/tenths.yaml';

interface Step {
  readonly uses?: string;
  readonly run?: string;
}

/** The job that `init --ci` writes, in a shop of one engine. */
async function stepsOfJob(session: string): Promise<readonly Step[]> {
  await bench.call('init', '--ci', '--no-git');
  await bench.call('new', 'engine', 'Pump');
  bench.put({
    'engines/pump/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits: { crankshaft_end_play: { new: 0.006 to 0.013 } }\n',
    'engines/pump/sessions/teardown.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\n${session}`,
  });
  return parse(readFileSync(at(JOB), 'utf8')).jobs.check.steps;
}

const reading = (value: string): string => `readings: [{ measure: crankshaft_end_play, value: ${value} }]\n`;

const INSTALLS = `mkdir -p node_modules/.bin && printf '#!/bin/sh\\nexec %s %s "$@"\\n' ${quoted(quoted(process.execPath))} ${quoted(quoted(builtProgram()))} > node_modules/.bin/tenths && chmod +x node_modules/.bin/tenths`;

/** A program of that name that does only this. */
function putProgram(path: string, script: string): void {
  bench.put({ [path]: `#!/bin/sh\n${script}\n` });
  chmodSync(at(path), 0o755);
}

interface Ran {
  readonly green: boolean;
  readonly log: string;
  readonly summary: string;
}

/** As a runner does: each \`run\` by bash, one after another, up to the first that fails. */
function runSteps(steps: readonly Step[]): Ran {
  const environment = {
    ...process.env,
    PATH: [at('programs'), process.env.PATH].join(delimiter),
    RUNNER_TEMP: bench.folder(),
    GITHUB_STEP_SUMMARY: at('summary.md'),
    // A runner begins with none: what is installed comes from the tarball.
    npm_config_cache: mkdtempSync(at('cache-')),
    // A quiet npm around the tests would quieten this one as well.
    npm_config_loglevel: 'notice',
  };
  let [log, green] = ['', true];
  for (const { run } of steps) {
    if (run === undefined || !green) continue;
    writeFileSync(at('step.sh'), run);
    const ended = spawnSync('bash', ['-e', at('step.sh')], {
      cwd: bench.folder(),
      env: environment,
      encoding: 'utf8',
    });
    log += ended.stdout + ended.stderr;
    green = ended.status === 0;
  }
  const summary = existsSync(at('summary.md')) ? readFileSync(at('summary.md'), 'utf8') : '';
  return { green, log, summary };
}

describe('the job that init --ci writes', () => {
  it.each([
    ['where all is well', reading('0.009'), true],
    ['where a reading is out', reading('0.019'), true],
    ['where a document cannot be trusted', reading('"0.009 furlong"'), false],
  ])('ends as it should %s', async (_, session, green) => {
    const steps = await stepsOfJob(session);
    putProgram('programs/npm', INSTALLS);
    const ran = runSteps(steps);
    expect(ran.green, ran.log).toBe(green);
    expect(ran.summary).toContain('    Pump  engines/pump');
  });

  it.each([
    ['npm fails', 'exit 1', ''],
    ['npm installs no tenths', 'exit 0', ''],
    ['what is installed does not start', INSTALLS, 'exit 1'],
    ['what is installed is killed', INSTALLS, '[ "$1" = --version ] || kill -9 $$'],
    ['what is installed prints no report', INSTALLS, '[ "$1" = --version ] || exit 1'],
    ['what is installed says 2', INSTALLS, '[ "$1" = --version ] || exit 2'],
  ])('is red where %s', async (_, npm, tenths) => {
    const steps = await stepsOfJob(reading('0.009'));
    putProgram('programs/npm', npm);
    if (tenths !== '') {
      putProgram('broken', tenths);
      putProgram('programs/npm', `${npm} && cp broken node_modules/.bin/tenths`);
    }
    expect(runSteps(steps)).toMatchObject({ green: false });
  });

  it('is red where there is no engine: nothing was checked', async () => {
    await bench.call('init', '--ci', '--no-git');
    putProgram('programs/npm', INSTALLS);
    const ran = runSteps(parse(readFileSync(at(JOB), 'utf8')).jobs.check.steps);
    expect(ran).toMatchObject({ green: false });
    expect(ran.log).toContain('no engine found');
  });

  it('is told of in the log where a reading is out', async () => {
    const steps = await stepsOfJob(reading('0.019'));
    putProgram('programs/npm', INSTALLS);
    expect(runSteps(steps).log).toMatch(/^::warning::an engine is out of its limits/m);
  });

  it('shows text of documents in its summary as text', async () => {
    const steps = await stepsOfJob(`note: x\n${reading('{ value: 0.019, note: "``` ~~~ <b> [a](b) # c" }')}`);
    putProgram('programs/npm', INSTALLS);
    const { children } = parsedMarkdown(runSteps(steps).summary);
    expect(children.map(({ type }) => type)).toEqual(['code']);
  });

  it('installs by npm, which refuses a tarball that is not the one of the lock file', async () => {
    const steps = await stepsOfJob(reading('0.009'));
    bench.put({ 'package.json': '{"private":true}' });
    packPrinting('report');
    const words = ['install', '--save-dev', '--offline', '--cache', at('cache'), './tenths-1.0.0.tgz'];
    expect(spawnSync('npm', words, { cwd: bench.folder() })).toMatchObject({ status: 0 });
    expect(runSteps(steps)).toMatchObject({ green: true, summary: '    report\n' });
    packPrinting('another');
    const ran = runSteps(steps);
    expect(ran.log).toContain('EINTEGRITY');
    expect(ran.green).toBe(false);
  });
});

/** A tarball of a package of that name, whose program prints one line. */
function packPrinting(line: string): void {
  bench.put({
    'package/package.json': '{"name":"tenths","version":"1.0.0","bin":{"tenths":"tenths.sh"}}',
    'package/tenths.sh': `#!/bin/sh\necho ${line}\n`,
  });
  spawnSync('tar', ['-czf', 'tenths-1.0.0.tgz', 'package'], { cwd: bench.folder() });
}

describe('docs/ci.md', () => {
  it('shows the job and the hook as they are written', async () => {
    const page = readFileSync(new URL('../../../docs/ci.md', import.meta.url), 'utf8');
    const blocks = [...page.matchAll(/^```(?:yaml|sh)\n([\s\S]*?)^```$/gm)].map(([, text]) => text);
    await bench.call('init', '--ci', '--hook');
    expect(blocks).toContain(readFileSync(at(JOB), 'utf8'));
    expect(blocks).toContain(readFileSync(at('.git/hooks/pre-commit'), 'utf8'));
  });
});
