import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { CHECK_FORMATS } from '../../../src/output/check/formats/index.ts';
import { DIFF_FORMATS } from '../../../src/output/diff/formats/index.ts';
import { FILM_FORMATS } from '../../../src/output/film/formats/index.ts';
import { LINES_FORMATS } from '../../../src/output/lines/formats/index.ts';
import { PAGES_FORMATS } from '../../../src/output/pages/formats/index.ts';
import { PLAN_FORMATS } from '../../../src/output/plan/formats/index.ts';
import { TORQUE_FORMATS } from '../../../src/output/torque/formats/index.ts';
import { TREND_FORMATS } from '../../../src/output/trend/formats/index.ts';
import { benchFolder } from '../calling.ts';
import { COMMAND_SHOP, LEAVES } from '../commandShop.ts';

const bench = benchFolder();
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');
const call = (words: string) => bench.call(...words.split(' '));

beforeEach(() => bench.put(COMMAND_SHOP));

const CALLS: readonly (readonly [string, object])[] = [
  ['check engines', CHECK_FORMATS],
  ['diff teardown rebuild pump', DIFF_FORMATS],
  ['trend crankshaft_end_play pump', TREND_FORMATS],
  ['explain crankshaft_end_play pump', LINES_FORMATS],
  ['explain reading/out', LINES_FORMATS],
  ['study pump', LINES_FORMATS],
  ['torque caps pump', TORQUE_FORMATS],
  ['plan pump --order', PLAN_FORMATS],
  ['film pump', FILM_FORMATS],
  ['part', PAGES_FORMATS],
  ['instruments', PAGES_FORMATS],
  ['recall dial --error 0.001', PAGES_FORMATS],
];

const WITH_FORMATS = CALLS.map(([words, formats]) => [words, Object.keys(formats)] as const);

it('is called below for every command that has it', () => {
  const having = LEAVES.filter(({ command }) => command.options.some(({ long }) => long === '--format'));
  const called = new Set(CALLS.map(([words]) => words.split(' ')[0]));
  // What shares found is gathered in every format in gather.test.ts.
  expect(having.map(({ name }) => name).filter((name) => !called.has(name))).toEqual(['gather']);
});

describe.each(WITH_FORMATS)('tenths %s', (words, formats) => {
  it('writes into files what it prints, all in one run', async () => {
    const all = formats.map((format) => `--format ${format}:out.${format}`).join(' ');
    const { out, err, exitCode } = await call(`${words} ${all}`);
    expect({ out, err }).toEqual({ out: '', err: '' });
    for (const format of formats) {
      const alone = await call(`${words} --format ${format}`);
      expect(alone.out).not.toBe('');
      expect(read(`out.${format}`)).toBe(alone.out);
      expect(alone.exitCode).toBe(exitCode);
    }
  });

  it('lists the formats where one is unknown', async () => {
    const { out, err, exitCode } = await call(`${words} --format pictures:x`);
    expect({ out, exitCode }).toEqual({ out: '', exitCode: 2 });
    expect(err).toContain(`Allowed choices are ${formats.join(', ')}.`);
  });
});

describe('a call that cannot be carried out', () => {
  it.each([
    ['two formats to standard output', '--format text --format json', 'text goes to standard output already'],
    ['two formats into one file', '--format json:a --format text:a', 'json goes to a already'],
    ['no file behind the colon', '--format json:', 'Name a file behind the colon.'],
    ['an unknown session', '--session nowhere --format json:a', 'unknown session nowhere'],
    ['no engine', '--format json:a', 'no engine found', 'empty'],
  ])('writes nothing: %s', async (_, words, told, where = 'engines') => {
    mkdirSync(join(bench.folder(), 'empty'));
    const { out, err, exitCode } = await call(`check ${where} ${words}`);
    expect({ out, exitCode }).toEqual({ out: '', exitCode: 2 });
    expect(err).toContain(told);
    expect(readdirSync(bench.folder())).not.toContain('a');
  });

  it('says which files it could not write, and writes the others', async () => {
    mkdirSync(join(bench.folder(), 'folder'));
    symlinkSync('target', join(bench.folder(), 'link'));
    const files = ['folder', 'link', 'nowhere/a', 'sound'].map((file, index) => {
      const format = ['text', 'json', 'markdown', 'json'][index];
      return `--format ${format}:${file}`;
    });
    const { err, exitCode } = await call(`check engines ${files.join(' ')}`);
    expect(exitCode).toBe(2);
    expect(err).toBe(
      'tenths: text:folder: folder is not a regular file\n        json:link: link is a link, or lies behind one; markdown:nowhere/a: a was not written: no such file or folder (ENOENT)\n',
    );
    expect(read('sound')).toBe((await call('check engines --format json')).out);
    expect(readdirSync(bench.folder())).not.toContain('target');
  });
});

it('what stood in a file gives way to the whole of what is written', async () => {
  bench.put({ 'a.json': 'x'.repeat(1_000_000) });
  await call('check engines --format json:a.json');
  expect(read('a.json')).toBe((await call('check engines --format json')).out);
});
