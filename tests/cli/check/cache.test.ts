import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CHECK_FORMATS } from '../../../src/output/check/formats/index.ts';
import { callHere, type HereOptions } from '../../inProcess.ts';
import { projectFolder } from '../../program.ts';
import { runs } from '../../propertyRuns.ts';
import { git } from '../../shell/gitShop.ts';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const bench = benchFolder();
const at = (...path: readonly string[]): string => join(bench.folder(), ...path);

type Options = Omit<HereOptions, 'cwd' | 'cache'> & { readonly from?: string };

const call = (words: readonly string[], { from = 'shop', ...options }: Options = {}) =>
  callHere(words, { cwd: at(from), ...options });

/** The same with what earlier calls of the test have kept. */
const cached = (words: readonly string[], { from = 'shop', ...options }: Options = {}) =>
  callHere(words, { cwd: at(from), ...options, cache: { folder: at('kept'), build: 'of the tests' } });

/** A file that is written anew is another. */
const kept = (): ReadonlyMap<string, number> =>
  new Map(
    readdirSync(at('kept'), { recursive: true, encoding: 'utf8' }).map((path) => [
      path,
      statSync(at('kept', path)).ino,
    ]),
  );

const FORMATS = Object.keys(CHECK_FORMATS);
const into = (name: string): readonly string[] =>
  FORMATS.flatMap((each) => ['--format', `${each}:../${name}.${each}`]);
const read = (path: string): string => readFileSync(at(path), 'utf8');

const session = (value: string, more = ''): string =>
  `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, with: dial, value: ${value} }]\n${more}`;

/** Engines that are well, out, broken, and named in another's documents. */
function putShop(): void {
  mkdirSync(at('kept'));
  const engines = ['0.008', '0.030', '0.014', '0.0061'].map((value, index) => [
    [`shop/engines/p${index}/engine.yaml`, ENGINE],
    [
      `shop/engines/p${index}/limits.yaml`,
      index === 2 ? 'kind: limits\nextends: ../../family.yaml\nlimits: {}\n' : LIMITS,
    ],
    [`shop/engines/p${index}/1.yaml`, session(value)],
  ]);
  bench.put({
    'shop/shop.yaml': SHOP,
    'shop/instruments.yaml': INSTRUMENTS,
    'shop/family.yaml': LIMITS,
    'shop/joint.yaml': 'kind: torque\njoint: rod caps\npases: 3\n',
    ...Object.fromEntries(engines.flat()),
    'shop/engines/p3/2.yaml': 'kind: session\nstage: rebild\ndate: 2026-02-04\n',
  });
}

describe('a check with what an earlier one kept', () => {
  it('writes of the example shop what it wrote without, in every format, and works nothing out', async () => {
    mkdirSync(at('kept'));
    cpSync(join(projectFolder, 'examples'), at('shop'), { recursive: true });
    const words = (name: string): readonly string[] => ['check', 'engines', ...into(name)];
    const cold = await call(words('cold'));
    expect(await cached(words('first'))).toEqual(cold);
    const before = kept();
    expect(await cached(words('second'))).toEqual(cold);
    expect(kept()).toEqual(before);
    expect(before.size).toBeGreaterThan(4);
    for (const each of FORMATS) {
      expect(read(`first.${each}`), each).toBe(read(`cold.${each}`));
      expect(read(`second.${each}`), each).toBe(read(`cold.${each}`));
    }
  });

  it('prints by its own options, from its own folder and at its own width', async () => {
    putShop();
    await call(['check', 'engines/p1', '--known', at('known.json'), '--update-known']);
    const known = ['--known', at('known.json')];
    const calls: readonly (readonly [readonly string[], Options?])[] = [
      [['check']],
      [['check'], { columns: 40 }],
      [['check'], { columns: 120, env: { NO_COLOR: '1' } }],
      [['check'], { from: 'shop/engines' }],
      [['check', '.'], { from: 'shop/engines/p1' }],
      [['check', '../p1'], { from: 'shop/engines/p2' }],
      [['check', 'engines/p1']],
      [['check', 'engines/p1/1.yaml']],
      [['check', '--all']],
      [['check', '--detail']],
      [['check', '--strict']],
      [['check', '--session', 'teardown']],
      [['check', '--rule', 'guarded']],
      [['check', '--judge-by', 'new']],
      [['check', '--format', 'json']],
      [['check', '--format', 'lines', ...known]],
      [['check', '--format', 'lines']],
      [['check', '--share', '1/2', '--format', 'json']],
      [['check', '--share', '1/1', '--format', 'json']],
      [['check', ...known]],
    ];
    const plain = [];
    for (const [words, options] of calls) plain.push(await call(words, options));
    for (const round of [1, 2])
      for (const [index, [words, options]] of calls.entries())
        expect(await cached(words, options), `${words.join(' ')} in round ${round}`).toEqual(plain[index]);
  });

  it('works out anew what changed and nothing else; with --no-cache everything, and keeps nothing', async () => {
    putShop();
    await cached(['check']);
    const before = kept();
    bench.put({ 'shop/engines/p0/1.yaml': session('0.031') });
    const { stdout } = await cached(['check']);
    expect(stdout).toContain('0.031');
    const changed = [...kept()].filter(([path, inode]) => before.get(path) !== inode);
    expect(changed).toHaveLength(1);
    rmSync(at('kept'), { recursive: true });
    mkdirSync(at('kept'));
    expect((await cached(['check', '--no-cache'])).stdout).toBe(stdout);
    expect(kept().size).toBe(0);
  });

  it('is not misled by an entry of which a byte was flipped', async () => {
    putShop();
    const { stdout } = await cached(['check', '--format', 'json']);
    for (const [path] of kept()) {
      if (statSync(at('kept', path)).isDirectory()) continue;
      const text = readFileSync(at('kept', path), 'utf8');
      writeFileSync(at('kept', path), text.replaceAll('"error"', '"remark"').replaceAll('0.030', '0.010'));
    }
    expect((await cached(['check', '--format', 'json'])).stdout).toBe(stdout);
  });

  it('writes the same of commits, of what is staged, and in another working tree of the repository', async () => {
    putShop();
    git(at('shop'), 'init', '--quiet');
    git(at('shop'), 'add', '--all');
    git(at('shop'), '-c', 'user.name=R', '-c', 'user.email=r@example.org', 'commit', '--quiet', '-m', 'one');
    git(at('shop'), 'worktree', 'add', '--quiet', at('other'));
    bench.put({ 'shop/engines/p0/1.yaml': session('0.031') });
    git(at('shop'), 'add', '--all');
    bench.put({ 'shop/engines/p0/1.yaml': session('0.007') });
    const calls: readonly (readonly [string, Options?])[] = [
      ['check'],
      ['check', { from: 'other' }],
      ['check --at HEAD'],
      ['check --staged'],
      ['check --since HEAD'],
    ];
    const plain = await Promise.all(calls.map(([line, options]) => call(line.split(' '), options)));
    expect(new Set(plain.map(({ stdout }) => stdout)).size).toBe(5);
    for (const _ of ['first', 'second'])
      for (const [index, [line, options]] of calls.entries())
        expect(await cached(line.split(' '), options), line).toEqual(plain[index]);
    expect(git(at('shop'), 'status', '--porcelain')).toBe('MM engines/p0/1.yaml');
  });

  it('writes what a check without it writes, whatever was edited between two of them', async () => {
    putShop();
    await fc.assert(
      fc.asyncProperty(edit, async ([path, change]) => {
        change(at('shop', path));
        for (const words of [['check'], ['check', '--format', 'json', '--all']])
          expect(await cached(words), path).toEqual(await call(words));
      }),
      { ...runs(200, 12), endOnFailure: true },
    );
  });
});

type Change = (path: string) => void;

const write =
  (text: string): Change =>
  (path) => {
    rmSync(path, { recursive: true, force: true });
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, text);
  };

const remove: Change = (path) => rmSync(path, { recursive: true, force: true });

const link =
  (target: string): Change =>
  (path) => {
    write('')(path);
    rmSync(path);
    symlinkSync(target, path);
  };

const value = fc.integer({ min: 40, max: 400 }).map((each) => (each / 10_000).toFixed(4));
const engine = fc.constantFrom('p0', 'p1', 'p2', 'p3');

/** What people, editors and git do to a shop: at a path, one way or another. */
const edit: fc.Arbitrary<readonly [string, Change]> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(engine, value)
      .map(([name, each]) => [`engines/${name}/1.yaml`, write(session(each))] as const),
  },
  fc
    .tuple(engine, value)
    .map(([name, each]) => [`engines/${name}/more/3.yaml`, write(session(each))] as const),
  engine.map((name) => [`engines/${name}/more`, remove] as const),
  engine.map(
    (name) =>
      [
        `engines/${name}/limits.yaml`,
        write('kind: limits\nextends: ../../family.yaml\nlimits: {}\n'),
      ] as const,
  ),
  value.map((each) => ['family.yaml', write(LIMITS.replace('0.013', each))] as const),
  fc.constant(['family.yaml', remove] as const),
  value.map(
    (each) =>
      [
        'instruments.yaml',
        write(INSTRUMENTS.replace('resolution: 0.001 in', `resolution: ${each} in`)),
      ] as const,
  ),
  fc.constantFrom(
    ['shop.yaml', write(`${SHOP}rule: guarded\n`)] as const,
    ['shop.yaml', write(SHOP)] as const,
  ),
  engine.map((name) => [`engines/${name}/notes`, write('kind: session\n')] as const),
  engine.map((name) => [`engines/${name}/.hidden.yaml`, write(session('0.02'))] as const),
  engine.map((name) => [`engines/${name}/4.yaml`, link('1.yaml')] as const),
  engine.map((name) => [`engines/${name}/engine.yaml`, write('kind: engine\nname: \n')] as const),
  engine.map((name) => [`engines/${name}/engine.yaml`, write(ENGINE)] as const),
);
