import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { CHECK_FORMATS } from '../../../src/output/check/formats/index.ts';
import { benchFolder } from '../calling.ts';
import { COMMAND_SHOP } from '../commandShop.ts';

const bench = benchFolder();
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');
const call = (words: string) => bench.call(...words.split(' '));

beforeEach(() => bench.put(COMMAND_SHOP));

const WITH_FORMATS: readonly (readonly [string, readonly string[]])[] = [
  ['check engines', Object.keys(CHECK_FORMATS)],
  ['diff teardown rebuild pump', ['text', 'json', 'markdown', 'html']],
  ['trend crankshaft_end_play pump', ['text', 'markdown', 'json', 'csv', 'html']],
  ['explain crankshaft_end_play pump', ['text', 'markdown']],
  ['explain reading/out', ['text', 'markdown']],
  ['study pump', ['text', 'markdown']],
  ['torque caps pump', ['text', 'markdown', 'json', 'html']],
  ['plan pump --order', ['text', 'markdown', 'json', 'csv', 'html']],
];

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
