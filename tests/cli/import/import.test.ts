import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const bench = benchFolder();
const SESSION = 'engines/pump/sessions/2026-02-10-machined.yaml';
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');

const MAPPING = `columns: { position: Cyl, values: { Top: [top], Bottom: [bottom] }, with: Gauge, note: Remark }
measure: cylinder_bore
delimiter: comma
decimal: point
unit: in
decimals: 4
`;

const BORES = `Cyl,Top,Bottom,Gauge,Remark
1,4.1261,4.1254,bore-2-6,
2,4.126,4.125,bore-2-6,"scored, lightly"
`;

const shopWith = (files: Readonly<Record<string, string>> = {}): void =>
  bench.put({
    'shop.yaml': SHOP,
    'instruments.yaml': INSTRUMENTS,
    'engines/pump/engine.yaml': ENGINE,
    'engines/pump/limits.yaml': LIMITS,
    'imports/bores.yaml': MAPPING,
    'bores.csv': BORES,
    ...files,
  });

const importing = (...words: readonly string[]) =>
  bench.call('import', 'bores.csv', '--stage', 'machined', '--date', '2026-02-10', ...words);

describe('readings from a spreadsheet', () => {
  it('become a session as a person would write it, with the zeros that the spreadsheet dropped', async () => {
    shopWith();
    const called = await importing('--by', 'RK');
    expect(read(SESSION)).toBe(`# yaml-language-server: $schema=../../../.tenths/schemas/session.json
kind: session
stage: machined
date: 2026-02-10
by: RK
readings:
  - measure: cylinder_bore
    with: bore-2-6
    stations: [top, bottom]
    at:
      1: [4.1261, 4.1254]
      2: [{ value: 4.1260, note: "scored, lightly" }, { value: 4.1250, note: "scored, lightly" }]
imported:
  - { file: bores.csv, rows: 2, sha256: "${/sha256: "(\w+)"/.exec(read(SESSION))?.[1]}" }
`);
    expect(called.err).toContain(
      '4 readings from bores.csv into engines/pump/sessions/2026-02-10-machined.yaml',
    );
    expect(called.out).toContain('cylinder taper, in  wear max 0.0020');
    expect(called.exitCode).toBe(0);
  });

  it.each([
    ['the mapping where no column does', ', with: Gauge', 'mic-4-5'],
    ['their column where there is one', '', 'bore-2-6'],
  ])('name the instrument of %s', async (_, column, instrument) => {
    shopWith({ 'imports/bores.yaml': `${MAPPING.replace(column, '')}with: mic-4-5\n` });
    await importing();
    expect(read(SESSION)).toContain(`  - measure: cylinder_bore\n    with: ${instrument}\n`);
  });

  it('are shown first when asked, and nothing is written', async () => {
    shopWith();
    const called = await importing('--dry-run');
    expect(called.out).toContain('      1: [4.1261, 4.1254]\n');
    expect(called.err).toContain('nothing was written');
    expect(existsSync(join(bench.folder(), SESSION))).toBe(false);
    await importing();
    expect(read(SESSION)).toBe(called.out);
  });

  it('come in once: a second call changes nothing, under another name too, and a file that grew brings its new rows', async () => {
    shopWith();
    await importing();
    const before = read(SESSION);
    expect(await importing()).toMatchObject({ exitCode: 0, out: '' });
    bench.put({ 'copy.csv': BORES });
    const copied = await bench.call('import', 'copy.csv', '--stage', 'machined', '--date', '2026-02-11');
    expect(copied.err).toContain('Nothing is new: 2 rows of copy.csv are in 2026-02-10-machined already');
    expect(read(SESSION)).toBe(before);
    bench.put({ 'bores.csv': `${BORES}3,4.1258,4.1251,bore-2-6,\n` });
    expect((await importing()).err).toContain('2 readings from bores.csv');
    expect(read(SESSION)).toContain('      3: [4.1258, 4.1251]\n');
    expect(read(SESSION)).toMatch(/imported:\n.*rows: 2, .*\n.*rows: 3, /);
    expect(await importing()).toMatchObject({ exitCode: 0, out: '' });
  });

  it('whose rows were changed afterwards are refused', async () => {
    shopWith();
    await importing();
    bench.put({ 'bores.csv': BORES.replace('4.1261', '4.1262') });
    const called = await importing();
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain(
      'the first 2 rows of bores.csv are not those that came into 2026-02-10-machined',
    );
  });

  it('go where a ~ waits for them', async () => {
    shopWith();
    await bench.call(
      'new',
      'session',
      '--stage',
      'machined',
      '--date',
      '2026-02-10',
      '--measure',
      'cylinder_bore',
    );
    bench.put({ 'bores.csv': 'Cyl,Top,Bottom,Gauge,Remark\n1,4.1261,4.1254,bore-2-6,\n' });
    await importing();
    expect(read(SESSION)).toContain('      1: [4.1261, ~, 4.1254]\n      2: [~, ~, ~]\n');
    expect(read(SESSION)).toContain('# Diameter of a cylinder');
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it.each([
    [
      'a comma where a point was stated',
      BORES.replace('4.1254', '"4,1254"'),
      'bores.csv:2:10 row 2, Bottom: 4,1254 has a comma in it',
    ],
    [
      'more decimals than the gauge shows',
      BORES.replace('4.1254', '4.12537'),
      'bores.csv:2:10 row 2, Bottom: 4.12537 has 5 decimals',
    ],
    ['a word', BORES.replace('4.1254', 'n/a'), 'row 2, Bottom: n/a is not a number'],
    [
      'a cylinder that is not there',
      BORES.replace('\n2,', '\n7,'),
      'bores.csv:3:1 row 3, Cyl: the engine has no cylinder 7',
    ],
    ['another heading', BORES.replace('Top', 'Tpo'), 'row 1: there is no column Top\n    did you mean Tpo?'],
    [
      'too many cells',
      BORES.replace('bore-2-6,\n', 'bore-2-6,,x\n'),
      'row 2: there are 6 cells under 5 headings',
    ],
    [
      'quotes without an end',
      BORES.replace('lightly"', 'lightly'),
      'bores.csv:3:24 line 3: the quotes that begin here never end',
    ],
    ['quotes within a word', BORES.replace('lightly"', 'lightly" x'), 'text after the closing quotes'],
  ])('with %s are refused by row and column, all at once, and none is taken', async (_, csv, message) => {
    shopWith({ 'bores.csv': csv });
    const called = await importing();
    expect(called.exitCode).toBe(2);
    expect(called.out).toBe('');
    expect(called.err).toContain(message);
    expect(called.err).toContain('nothing was written');
    expect(existsSync(join(bench.folder(), SESSION))).toBe(false);
  });

  it('may have decimal commas, semicolons, a unit of their own and one reading a row', async () => {
    shopWith({
      'imports/bores.yaml': `columns: { measure: Feature, position: No, station: At, value: mm }
measures: { Bore: cylinder_bore }
delimiter: semicolon
decimal: comma
unit: mm
decimals: as written
`,
      'bores.csv':
        '\uFEFFFeature;No;At;mm\r\nBore;1;top;104,80\r\nBore;1;bottom;104,79\r\nBore;1;top;104,81\r\n',
    });
    await importing();
    expect(read(SESSION)).toContain('      1: [{ repeat: [104.80 mm, 104.81 mm] }, 104.79 mm]\n');
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  describe('of tests', () => {
    const OWN = `${SHOP}characteristics:
  crack_test: { label: crack test, quantity: pass or fail, positions: main, instrument: by eye, pass: sound, fail: cracked }
  stud_count: { label: studs, quantity: count, positions: main, instrument: by eye }
`;
    const TESTS = `columns: { measure: What, position: Main, value: Result }
delimiter: comma
decimal: point
unit: mm
decimals: as written
`;
    const tests = (rows: string) =>
      shopWith({
        'shop.yaml': OWN,
        'imports/bores.yaml': TESTS,
        'bores.csv': `What,Main,Result\n${rows}`,
      });

    it('may hold their words, in any case, or those of the shop', async () => {
      tests('crack_test,1,PASS\ncrack_test,2,cracked\ncrack_test,3,Not done\nstud_count,1,4\n');
      await importing();
      expect(read(SESSION)).toContain('1: pass\n      2: fail\n      3: not done\n');
      expect(read(SESSION)).toContain('measure: stud_count\n    at:\n      1: 4\n');
    });

    it('refuse a number, and say the words', async () => {
      tests('crack_test,1,0.5\n');
      const called = await importing();
      expect(called.err).toContain('0.5 is not a result of a test');
      expect(called.err).toContain('write pass, fail, not done, sound, cracked');
      expect(existsSync(join(bench.folder(), SESSION))).toBe(false);
    });
  });
});

describe('a mapping', () => {
  it('is made from the headings of a file and is sound as it is', async () => {
    shopWith({ 'bores.csv': 'No;Reading\n1;4.1\n' });
    expect(await bench.call('import', 'bores.csv', '--new-map', 'plain')).toMatchObject({ exitCode: 0 });
    expect(read('imports/plain.yaml')).toContain('position: "No"\n');
    const called = await importing('--map', 'plain', '--dry-run');
    expect(called.err).not.toContain('error');
    expect(called.out).toContain('- measure: main_journal_diameter\n    at:\n      1: 4.1\n');
    expect((await bench.call('import', 'bores.csv', '--new-map', 'plain')).out).toContain(
      'kept      imports/plain.yaml',
    );
  });

  it.each([
    ['decimal: point\n', '', '`decimal:` must be stated: point or comma'],
    ['decimals: 4\n', '', '`decimals:` must be stated: spreadsheets drop the zeros'],
    ['unit: in', 'unit: inch', '`unit:` must be stated'],
    ['delimiter: comma', 'delimeter: comma', 'did you mean delimiter?'],
    ['measure: cylinder_bore\n', '', 'what is measured is not stated'],
  ])('without %j is refused where it stands', async (was, is, message) => {
    shopWith({ 'imports/bores.yaml': MAPPING.replace(was, is) });
    const called = await importing();
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain('imports/bores.yaml:');
    expect(called.err).toContain(message);
  });

  it.each([
    [['nothing.csv', '--stage', 'machined'], 'there is no file nothing.csv'],
    [['bores.csv'], 'there is no session of'],
    [['bores.csv', '--map', 'other', '--stage', 'machined'], 'there is no file imports/other.yaml'],
  ])('is not asked for by %j', async (words, message) => {
    shopWith();
    const called = await bench.call('import', ...words);
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain(message);
  });
});
