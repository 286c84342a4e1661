import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readCommand } from '../../output/check/formats/readCommand.ts';
import { nodesOf, parsedMarkdown } from '../../output/escape/readMarkdown.ts';
import { benchFolder } from '../calling.ts';
import { INSTALLS, putProgram, type Ran, runSteps, type Step } from './runSteps.ts';

const bench = benchFolder();
const at = (path: string): string => join(bench.folder(), path);
const JOB = '.github/workflows/tenths.yaml';

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

describe('the job that init --ci writes', () => {
  it.each([
    ['where all is well', reading('0.009'), true],
    ['where a reading is out', reading('0.019'), true],
    ['where a document cannot be trusted', reading('"0.009 furlong"'), false],
  ])('ends as it should %s', async (_, session, green) => {
    const steps = await stepsOfJob(session);
    putProgram(bench, 'programs/npm', INSTALLS);
    const ran = runSteps(bench, steps);
    expect(ran.green, ran.log).toBe(green);
    expect(ran.summary).toContain('## Pump (engines/pump)');
    expect(ran.log).toContain('Pump  engines/pump');
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
    putProgram(bench, 'programs/npm', npm);
    if (tenths !== '') {
      putProgram(bench, 'broken', tenths);
      putProgram(bench, 'programs/npm', `${npm} && cp broken node_modules/.bin/tenths`);
    }
    expect(runSteps(bench, steps)).toMatchObject({ green: false });
  });

  it('is red where there is no engine: nothing was checked', async () => {
    await bench.call('init', '--ci', '--no-git');
    putProgram(bench, 'programs/npm', INSTALLS);
    const ran = runSteps(bench, parse(readFileSync(at(JOB), 'utf8')).jobs.check.steps);
    expect(ran).toMatchObject({ green: false });
    expect(ran.log).toContain('no engine found');
  });

  it('annotates what is out where it was written down', async () => {
    const steps = await stepsOfJob(reading('0.019'));
    putProgram(bench, 'programs/npm', INSTALLS);
    expect(annotationsOf(runSteps(bench, steps))).toContainEqual({
      name: 'error',
      message: 'crankshaft end play: 0.019 in, loose by 6 thou (new max 0.013)',
      properties: {
        ...{ file: 'engines/pump/sessions/teardown.yaml', line: '4', endLine: '4' },
        ...{ col: expect.any(String), endColumn: expect.any(String), title: 'reading/out' },
      },
    });
  });

  it('shows text of documents in its summary as text', async () => {
    const summaryOf = async (note: string): Promise<Ran> => {
      const steps = await stepsOfJob(reading(`{ value: 0.019, note: "${note}" }`));
      putProgram(bench, 'programs/npm', INSTALLS);
      return runSteps(bench, steps);
    };
    const plain = await summaryOf('plain');
    const hostile = await summaryOf('``` ~~~ <b> [a](b) # c ::error::d');
    expect(plain.summary).toContain('plain');
    const added = hostile.summary.slice(plain.summary.length);
    expect(nodesOf(parsedMarkdown(added))).toEqual(nodesOf(parsedMarkdown(plain.summary)));
    expect(annotationsOf(hostile)).toHaveLength(annotationsOf(plain).length);
  });

  it('installs by npm, which refuses a tarball that is not the one of the lock file', async () => {
    const steps = await stepsOfJob(reading('0.009'));
    bench.put({ 'package.json': '{"private":true}' });
    packPrinting('report');
    const words = ['install', '--save-dev', '--offline', '--cache', at('cache'), './tenths-1.0.0.tgz'];
    expect(spawnSync('npm', words, { cwd: bench.folder() })).toMatchObject({ status: 0 });
    expect(runSteps(bench, steps)).toMatchObject({ green: true, summary: 'report\n' });
    packPrinting('another');
    const ran = runSteps(bench, steps);
    expect(ran.log).toContain('EINTEGRITY');
    expect(ran.green).toBe(false);
  });
});

const annotationsOf = ({ log }: Ran) => log.split('\n').flatMap((line) => readCommand(line) ?? []);

/** A tarball of a package of that name, whose program writes one line into each file that it is to write. */
function packPrinting(line: string): void {
  bench.put({
    'package/package.json': '{"name":"tenths","version":"1.0.0","bin":{"tenths":"tenths.sh"}}',
    'package/tenths.sh': `#!/bin/sh\nfor word; do case $word in *:*) echo ${line} > "\${word#*:}";; esac; done\n`,
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
