import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHECK_FORMATS } from '../../../src/output/check/formats/index.ts';
import { checkSchema } from '../../../src/output/schema/checkSchema.ts';
import { projectFolder } from '../../program.ts';
import { isLong } from '../../propertyRuns.ts';
import { benchFolder, callIn, type Files, putIn } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const bench = benchFolder();
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');

const into = (name: string): readonly string[] =>
  Object.keys(CHECK_FORMATS).flatMap((format) => ['--format', `${format}:${name}.${format}`]);

/** Checks a shop in so many shares and in one run, and gathers the shares. */
async function sharedAndWhole(of: number, ...options: readonly string[]) {
  const whole = await bench.call('check', 'shop', ...options, ...into('whole'));
  const numbers = Array.from({ length: of }, (_, index) => index + 1);
  const exits: number[] = [];
  for (const number of numbers) {
    const share = ['--share', `${number}/${of}`, '--format', `json:${number}.json`];
    exits.push((await bench.call('check', 'shop', ...options, ...share)).exitCode);
  }
  // In whatever order a shell names them.
  const files = numbers.map((number) => `${number}.json`).reverse();
  return { whole, exits, gathered: await bench.call('gather', ...files, ...into('gathered')) };
}

function expectSame({ whole, gathered }: Awaited<ReturnType<typeof sharedAndWhole>>): void {
  expect(gathered).toEqual(whole);
  expect(whole).toMatchObject({ out: '', err: '' });
  for (const format of Object.keys(CHECK_FORMATS)) {
    expect(read(`gathered.${format}`), format).toBe(read(`whole.${format}`));
  }
}

const reading = (number: number): string =>
  `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, with: dial, value: ${(0.004 + number * 0.0005).toFixed(4)} }]\n`;

/** Engines of which some are out, some have problems, and all share a document that has one. */
function engines(count: number): Files {
  const folderOf = (number: number): string => `shop/engines/pump-${String(number).padStart(4, '0')}`;
  const files = Array.from({ length: count }, (_, number) => [
    [`${folderOf(number)}/engine.yaml`, ENGINE],
    [`${folderOf(number)}/limits.yaml`, number === 7 ? 'kind: limits\nlimits: 3\n' : LIMITS],
    [`${folderOf(number)}/teardown.yaml`, reading(number)],
  ]);
  return {
    'shop/shop.yaml': SHOP,
    'shop/instruments.yaml': INSTRUMENTS,
    ...Object.fromEntries(files.flat()),
    'shop/joint.yaml': 'kind: torque\njoint: rod caps\npases: 3\n',
    [`${folderOf(3)}/rebuild.yaml`]: 'kind: session\nstage: rebild\ndate: 2026-02-04\n',
    'shop/engines/notes.yaml': 'kind: sesion\n',
    'shop/engines/.hidden.yaml': reading(1),
  };
}

describe('shares that are gathered', () => {
  it('are as one run of the example shop in every format', async () => {
    cpSync(join(projectFolder, 'examples'), join(bench.folder(), 'shop'), { recursive: true });
    const run = await sharedAndWhole(5);
    expectSame(run);
    // Of four engines none is left for the fifth.
    expect(run.exits[4]).toBe(0);
  });

  it.each([[[]], [['--all', '--detail', '--strict']]])(
    'are as one run of many engines with problems that they share, with %j',
    async (options) => {
      bench.put(engines(isLong ? 1000 : 12));
      const run = await sharedAndWhole(5, ...options);
      expectSame(run);
      expect(run.whole.exitCode).toBe(2);
      expect(JSON.parse(read('whole.json')).diagnostics.length).toBeGreaterThan(3);
    },
  );

  it('are as one run that knows findings', async () => {
    bench.put(engines(6));
    await bench.call('check', 'shop', '--known', 'known.json', '--update-known');
    bench.put({ 'shop/engines/pump-0000/teardown.yaml': reading(8) });
    expectSame(await sharedAndWhole(3, '--known', 'known.json'));
    expect(JSON.parse(read('gathered.json')).known.gone).not.toEqual([]);
  });

  it('are as the schema says', async () => {
    bench.put(engines(2));
    await bench.call('check', 'shop', '--share', '1/2', '--format', 'json:1.json');
    const validate = new Ajv().compile(checkSchema());
    expect(validate(JSON.parse(read('1.json'))), JSON.stringify(validate.errors)).toBe(true);
  });
});

describe('what cannot be gathered is refused', () => {
  /** Shares of one run and of others: nothing that is refused changes any of them. */
  let shares = '';
  beforeAll(async () => {
    shares = mkdtempSync(join(tmpdir(), 'tenths shares '));
    putIn(shares, engines(4));
    putIn(shares, { 'part.json': '{"format":"tenths.check","version":2,"share":{"engines":[]}}' });
    const check = (...words: readonly string[]) => callIn(shares, ['check', ...words]);
    await check('shop', '--share', '1/2', '--format', 'json:1.json');
    await check('shop', '--share', '2/2', '--format', 'json:2.json');
    await check('shop', '--share', '2/2', '--strict', '--format', 'json:strict.json');
    await check('shop', '--format', 'json:whole.json');
    const two = ['shop/engines/pump-0000', 'shop/engines/pump-0001'];
    await check(...two, '--share', '2/2', '--format', 'json:other.json');
  });
  afterAll(() => rmSync(shares, { recursive: true }));

  it.each([
    ['a share is missing', '1.json', 'share 2 of 2 is missing'],
    ['a share is named twice', '1.json 2.json 1.json', 'the files are not the shares of one run'],
    ['shares are of unlike runs', '1.json strict.json', 'the files are not the shares of one run'],
    ['shares are of other files', '1.json other.json', 'the files are not the shares of one run'],
    ['a file holds a whole run', 'whole.json', 'whole.json holds no share of a check'],
    ['a file holds a part of one', 'part.json', 'part.json holds no share of a check'],
    ['a file holds none', 'shop/shop.yaml', 'shop/shop.yaml holds no share of a check'],
    ['a file is not there', 'nowhere.json', 'nowhere.json'],
  ])('%s', async (_, files, told) => {
    const { out, err, exitCode } = await callIn(shares, ['gather', ...files.split(' ')]);
    expect({ out, exitCode }).toEqual({ out: '', exitCode: 2 });
    expect(err).toContain(told);
  });

  it.each(['0/3', '4/3', '1', '1/0', 'a/b', '1/2/3', '-1/2'])('a share of %s', async (share) => {
    expect(await bench.call('check', '--share', share)).toMatchObject({ exitCode: 2, out: '' });
  });
});
