import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { beforeEach, describe, expect, it } from 'vitest';
import { Remaining } from '../../../src/cli/check/known/knownFindings.ts';
import { checkSchema } from '../../../src/output/schema/checkSchema.ts';
import { type CheckOutput, saidIn } from '../../output/check/formats/checkOutput.ts';
import { readCommand } from '../../output/check/formats/readCommand.ts';
import { elementsOf, readXml } from '../../output/check/formats/readXml.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();
const check = (...words: readonly string[]) => bench.call('check', ...words);
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');
const KNOWN = ['--known', 'known.json'] as const;
const update = (...words: readonly string[]) => check(...words, ...KNOWN, '--update-known');
const known = (): readonly { code: string; engine: string; session: string; position: string }[] =>
  JSON.parse(read('known.json')).findings;

const session = (values: Readonly<Record<string, string>>): string =>
  `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - measure: main_bearing_clearance\n    at: { ${Object.entries(
    values,
  )
    .map(([position, value]) => `${position}: ${value}`)
    .join(', ')} }\n`;

const engine = (name: string, values: Readonly<Record<string, string>>) => ({
  [`engines/${name}/engine.yaml`]: `kind: engine\nname: ${name}\nlayout: { mains: 2, crankpins: 1, cylinders: 1 }\n`,
  [`engines/${name}/limits.yaml`]:
    'kind: limits\nsource: invented\nlimits: { main_bearing_clearance: { new: 0.0020 to 0.0038 } }\n',
  [`engines/${name}/one.yaml`]: session(values),
});
const put = (name: string, values: Readonly<Record<string, string>>): void => bench.put(engine(name, values));

const OK = '0.0030';
const OUT = '0.0041';

beforeEach(() => {
  bench.put({ 'shop.yaml': 'kind: shop\nunits: { length: in }\n' });
  put('a', { 1: OUT, 2: OK });
  put('b', { 1: OUT, 2: OK });
});

const json = async (
  ...words: readonly string[]
): Promise<CheckOutput & { known: { findings: number; gone: object[] } }> =>
  JSON.parse((await check(...KNOWN, '--format', 'json', ...words)).out);

const outs = (output: CheckOutput) =>
  saidIn(output)
    .filter(({ code }) => code === 'reading/out')
    .map(({ position, known: isKnown }) => [position, isKnown]);

describe('findings that were known', () => {
  it('fail before they are, and not afterwards; they stay counted and shown', async () => {
    expect(await check()).toMatchObject({ exitCode: 1 });
    expect(await update()).toMatchObject({ exitCode: 0 });
    const { out, exitCode } = await check(...KNOWN);
    expect(exitCode).toBe(0);
    expect(out).toMatch(/reading\/out {2}limit \S+ {2}known$/m);
    expect(out).toMatch(/2 errors.*; \d+ of them known$/m);
    const output = await json();
    expect(outs(output)).toEqual([
      ['1', true],
      ['1', true],
    ]);
    expect(output.known.gone).toEqual([]);
    const validate = new Ajv().compile(checkSchema());
    expect(validate(output), JSON.stringify(validate.errors)).toBe(true);
  });

  it('are known by what they are of, whatever their value and line', async () => {
    await update();
    bench.put({ 'engines/a/one.yaml': `# A line more.\n${session({ 1: '0.0052', 2: OK })}` });
    expect(await check(...KNOWN)).toMatchObject({ exitCode: 0 });
    for (const { code, ...where } of known().filter((each) => each.code === 'reading/out')) {
      expect(code).toBe('reading/out');
      expect(where).toMatchObject({ session: 'state', measure: 'main_bearing_clearance', position: '1' });
    }
  });

  it('do not cover a new one', async () => {
    await update();
    put('a', { 1: OUT, 2: OUT });
    expect(await check(...KNOWN)).toMatchObject({ exitCode: 1 });
    expect(outs(await json())).toEqual([
      ['1', true],
      ['2', false],
      ['1', true],
    ]);
  });

  it('are each known once', () => {
    const one = { code: 'a/b', engine: 'c', session: 'state', measure: null, position: null };
    const remaining = new Remaining([one, { ...one, position: '1' }]);
    expect([one, one, { ...one, position: '1' }].map((each) => remaining.take(each))).toEqual([
      true,
      false,
      true,
    ]);
  });

  it('do not cover warnings under --strict that are new', async () => {
    put('a', { 1: OK });
    put('b', { 1: OK, 2: OK });
    expect(await check('--strict')).toMatchObject({ exitCode: 1 });
    await update();
    expect(await check('--strict', ...KNOWN)).toMatchObject({ exitCode: 0 });
    put('b', { 1: OK });
    expect(await check('--strict', ...KNOWN)).toMatchObject({ exitCode: 1 });
  });

  it('never are problems with documents', async () => {
    bench.put({ 'engines/a/two.yaml': 'kind: sesion\n' });
    expect(await update()).toMatchObject({ exitCode: 2 });
    expect(read('known.json')).not.toContain('document/');
    expect(await check(...KNOWN)).toMatchObject({ exitCode: 2 });
  });

  it('are no failure in a file for a CI server, and stand last among annotations', async () => {
    await update();
    put('a', { 1: OUT, 2: OUT });
    await check(...KNOWN, '--format', 'junit:j', '--format', 'sarif:s', '--format', 'github:g');
    const failures = elementsOf(readXml(read('j')), 'failure').map(({ text }) => text);
    expect(failures).toEqual([expect.stringContaining('main bearing clearance 2')]);
    const { results } = JSON.parse(read('s')).runs[0];
    const states = results
      .filter(({ ruleId }: { ruleId: string }) => ruleId === 'reading/out')
      .map(({ baselineState }: { baselineState: string }) => baselineState);
    expect(states).toEqual(['unchanged', 'new', 'unchanged']);
    const titles = read('g')
      .split('\n')
      .flatMap((line) => readCommand(line)?.properties.title ?? []);
    expect(titles.filter((title) => title.startsWith('reading/out'))).toEqual([
      'reading/out',
      'reading/out (known)',
      'reading/out (known)',
    ]);
  });
});

describe('a known finding that is gone', () => {
  it('is told, and is no longer known after an update', async () => {
    await update();
    put('a', { 1: OK, 2: OK });
    const { out, exitCode } = await check(...KNOWN);
    expect(exitCode).toBe(0);
    const told = out.slice(out.indexOf('\nknown, and no longer found\n'));
    expect(told).toContain('\n  reading/out main_bearing_clearance 1, engines/a, the present state\n');
    expect((await json()).known.gone).toContainEqual(
      expect.objectContaining({ code: 'reading/out', engine: 'engines/a', session: 'state', position: '1' }),
    );
    await update();
    expect(known().filter(({ code }) => code === 'reading/out')).toHaveLength(1);
  });

  it('is not one that was not looked at', async () => {
    await update();
    const before = known();
    expect((await json('engines/b')).known.gone).toEqual([]);
    expect((await json('--session', 'one')).known.gone).toEqual([]);
    bench.put({ 'engines/a/two.yaml': 'kind: sesion\n' });
    expect((await json()).known.gone).toEqual([]);
    put('b', { 1: OK, 2: OK });
    await update('engines/b');
    const ofA = (list: typeof before) => list.filter(({ engine }) => engine === 'engines/a');
    expect(ofA(known())).toEqual(ofA(before));
    expect(known().length).toBeLessThan(before.length);
  });

  it('is one whose engine is gone', async () => {
    await update();
    rmSync(join(bench.folder(), 'engines/a'), { recursive: true });
    const { known: told } = await json();
    expect(told.gone).toContainEqual(expect.objectContaining({ engine: 'engines/a', code: 'reading/out' }));
  });
});

it.each([
  [['--update-known'], '--update-known writes the file of --known'],
  [['--known', 'nowhere.json'], 'there is no file nowhere.json'],
  [['--known', 'shop.yaml'], 'shop.yaml is not a list of known findings'],
  [['--known', 'other.json'], 'other.json is not a list of known findings'],
])('a call with %j is refused', async (words, told) => {
  bench.put({ 'other.json': '{"format":"tenths.known","version":1,"findings":[{"code":1}]}' });
  const { out, err, exitCode } = await check(...words);
  expect({ out, exitCode }).toEqual({ out: '', exitCode: 2 });
  expect(err).toContain(told);
});

it('the file has a line a finding, and is the same again', async () => {
  await update();
  const first = read('known.json');
  expect(first.split('\n')).toHaveLength(known().length + 3);
  await update();
  expect(read('known.json')).toBe(first);
});
