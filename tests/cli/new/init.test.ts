import { execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runLine } from '../../program.ts';
import { configure } from '../../shell/gitShop.ts';
import { benchFolder, callIn } from '../calling.ts';

const bench = benchFolder();

const LIMITS = 'kind: limits\nsource: Invented.\nlimits: { crankshaft_end_play: { wear: { max: 0.018 } } }\n';
const session = (endPlay: string): string =>
  `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, value: ${endPlay} }]\n`;
const [SOUND, OUT, BROKEN] = [session('0.009'), session('0.019'), session('"0.009 furlong"')];

const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');
const exists = (path: string): boolean => existsSync(join(bench.folder(), path));

describe('a new shop', () => {
  /** One with a hook, in its first commit. */
  let hooked = '';
  beforeAll(async () => {
    hooked = mkdtempSync(join(tmpdir(), 'tenths hooked '));
    await callIn(hooked, ['init', '--hook']);
    configure(join(hooked, '.git'), { 'core.fsync': 'none', 'maintenance.auto': 'false' });
    const first = await runLine('git add --all && git commit --quiet -m Shop', { cwd: hooked });
    expect(first).toMatchObject({ exitCode: 0, stderr: '' });
  });
  afterAll(() => rmSync(hooked, { recursive: true }));

  it('has defaults, a register, settings of git and of editors, and is sound as it is', async () => {
    const made = await bench.call('init', '--no-git');
    expect(made).toMatchObject({ exitCode: 0, err: '' });
    for (const path of ['shop.yaml', 'instruments.yaml', '.gitattributes', '.gitignore', '.editorconfig']) {
      expect(exists(path), path).toBe(true);
    }
    await bench.call('new', 'engine', 'Pump');
    expect(await bench.call('check')).toMatchObject({ exitCode: 0, err: '' });
  });

  it.each(['in', 'mm'])(
    'in %s has examples of instruments that are sound when they are taken',
    async (unit) => {
      await bench.call('init', '--no-git', '--units', unit);
      const taken = read('instruments.yaml')
        .replace('instruments: {}', 'instruments:')
        .replace(/^# {2}(\S)/gm, '  $1');
      expect(taken).toContain('\n  beam-60: {');
      writeFileSync(join(bench.folder(), 'instruments.yaml'), taken);
      await bench.call('new', 'engine', 'Pump');
      const checked = await bench.call('check');
      expect(checked.out).toContain('1 engine, 0 sessions: no findings');
      expect(checked.exitCode).toBe(0);
    },
  );

  it('finds its schemas from each document without a network', async () => {
    await bench.call('init', '--no-git');
    await bench.call('new', 'engine', 'Pump');
    for (const path of [
      'shop.yaml',
      'instruments.yaml',
      'engines/pump/engine.yaml',
      'engines/pump/limits.yaml',
    ]) {
      const schema = /^# yaml-language-server: \$schema=(.+)$/m.exec(read(path))?.[1] ?? '';
      const file = join(bench.folder(), path, '..', schema);
      expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ type: 'object' });
    }
  });

  it('makes the folder that is named, with those above it, and says so', async () => {
    const made = await bench.call('init', 'shops/mine', '--no-git');
    expect(made).toMatchObject({ exitCode: 0, err: '' });
    expect(made.out).toMatch(/^made {6}shops\/mine\/\nmade {6}shop\.yaml\n[\s\S]+ {2}cd shops\/mine\n/);
    expect(exists('shops/mine/shop.yaml')).toBe(true);
    const again = await bench.call('init', 'shops/mine', '--no-git');
    expect(again.out).not.toContain('shops/mine/\n');
  });

  it('never overwrites: a second run keeps every file, and adds only lines that git needs', async () => {
    bench.put({ 'shop.yaml': 'kind: shop # mine\n', '.gitignore': 'scratch/\r\n*.lock' });
    const made = await bench.call('init', '--no-git');
    expect(made.out).toContain('kept      shop.yaml');
    expect(read('shop.yaml')).toBe('kind: shop # mine\n');
    expect(read('.gitignore')).toBe('scratch/\r\n*.lock\r\n.*.tmp\r\n.*.part\r\n');
    const before = read('.gitignore');
    const again = await bench.call('init', '--no-git');
    expect(again.out).not.toMatch(/made|added/);
    expect(read('.gitignore')).toBe(before);
  });

  it('is a git repository unless it lies in one, and has a hook and a job if wanted', async () => {
    await bench.call('init', '--hook', '--ci');
    expect(exists('.git')).toBe(true);
    expect(statSync(join(bench.folder(), '.git/hooks/pre-commit')).mode & 0o111).not.toBe(0);
    expect(exists('.github/workflows/tenths.yaml')).toBe(true);
    mkdirSync(join(bench.folder(), 'inner'));
    await bench.call('init', 'inner');
    expect(exists('inner/.git')).toBe(false);
  });

  it.each<[title: string, staged: string, inFolder: string, commits: boolean, said: RegExp]>([
    ['a sound session', SOUND, SOUND, true, /^$/],
    ['a reading that is out', OUT, OUT, true, /^Pump: 1 out: /m],
    ['a document that cannot be trusted', BROKEN, BROKEN, false, /error document/],
    ['one that was mended after it was staged', BROKEN, SOUND, false, /error document/],
    ['a sound one that was broken after it was staged', SOUND, BROKEN, true, /^$/],
  ])('has a hook that looks at what is committed: %s', async (_, staged, inFolder, commits, said) => {
    const folder = bench.folder();
    cpSync(hooked, folder, { recursive: true });
    await bench.call('new', 'engine', 'Pump');
    bench.put({ '.git/info/exclude': 'later\n', 'engines/pump/limits.yaml': LIMITS });
    bench.put({ 'engines/pump/sessions/teardown.yaml': staged, later: inFolder });
    const save = 'mv later engines/pump/sessions/teardown.yaml';
    const committed = await runLine(`git add --all && ${save} && git commit --quiet -m Teardown`, {
      cwd: folder,
    });
    expect(committed.exitCode).toBe(commits ? 0 : 1);
    expect(committed.stderr).toMatch(said);
    expect(read('engines/pump/sessions/teardown.yaml')).toBe(inFolder);
  });

  it('keeps a hook that is there, and leaves hooks alone that lie elsewhere', async () => {
    await bench.call('init');
    bench.put({ '.git/hooks/pre-commit': 'true\n' });
    expect((await bench.call('init', '--hook')).out).toContain('kept      .git/hooks/pre-commit');
    expect(read('.git/hooks/pre-commit')).toBe('true\n');
    execFileSync('git', ['config', 'core.hooksPath', '../shared'], { cwd: bench.folder() });
    const { exitCode, err } = await bench.call('init', '--hook');
    expect(exitCode).toBe(2);
    expect(err).toContain('git takes its hooks from ../shared, as core.hooksPath says');
  });

  it('does not write through a link, says so, and makes the rest', async () => {
    mkdirSync(join(bench.folder(), 'elsewhere'));
    symlinkSync(join(bench.folder(), 'elsewhere'), join(bench.folder(), '.tenths'));
    const made = await bench.call('init', '--no-git');
    expect(made.exitCode).toBe(2);
    expect(made.err).toContain('.tenths is a link');
    expect(exists('shop.yaml')).toBe(true);
    expect(exists('elsewhere/schemas')).toBe(false);
  });

  it.each([
    [['init', 'a-file'], 'a-file is not a folder'],
    [['init', 'a-file/shop'], 'was not made'],
    [['init', '--units', 'ft'], 'Allowed choices are in, mm'],
    [['init', '--hook', '--no-git'], 'leave out one of them'],
  ])('refuses %j with exit code 2', async (words, message) => {
    bench.put({ 'a-file': '' });
    const called = await bench.call(...words);
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain(message);
    expect(called.err).not.toContain('    at ');
  });
});
