import { mkdtempSync, readdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callHere } from '../inProcess.ts';
import type { Ran } from '../program.ts';
import { inCopyOf } from '../replay.ts';
import { putIn } from './calling.ts';
import { COMMAND_SHOP } from './commandShop.ts';
import { ENGINE } from './fourCylinder.ts';

/** A second engine, so that none is meant without a word. */
const SHOP: Readonly<Record<string, string>> = {
  ...COMMAND_SHOP,
  'engines/pump/engine.yaml': (COMMAND_SHOP['engines/pump/engine.yaml'] ?? '').replace(
    /name: .*/,
    'name: Weir Pump no. 3',
  ),
  'engines/hoist/engine.yaml': ENGINE.replace(/name: .*/, 'name: Quay hoist'),
};

const PUMP = 'engines/pump';

interface Call {
  readonly name: string;
  /** With the engine as a word where it stands. */
  readonly words: (engine: string | undefined) => readonly string[];
  readonly input?: string;
  readonly writes?: boolean;
}

const last =
  (...words: readonly string[]) =>
  (engine: string | undefined) => [...words, ...(engine === undefined ? [] : [engine])];

const CALLS: readonly Call[] = [
  { name: 'check', words: last('check') },
  { name: 'diff of sessions', words: last('diff', 'teardown', 'rebuild') },
  { name: 'trend', words: last('trend', 'crankshaft_end_play') },
  { name: 'explain', words: last('explain', 'crankshaft_end_play') },
  { name: 'study', words: last('study') },
  { name: 'film', words: last('film') },
  { name: 'calc', words: last('calc', 'crankshaft_end_play') },
  { name: 'plan', words: last('plan', '--session', 'teardown') },
  { name: 'report', words: last('report', '--to', 'sheet.html'), writes: true },
  { name: 'torque', words: last('torque', 'caps') },
  { name: 'new session', words: last('new', 'session', '--stage', 'trial'), writes: true },
  { name: 'new torque', words: last('new', 'torque', 'rods', '--passes', '40'), writes: true },
  {
    name: 'record',
    words: last('record', '--stage', 'trial', '--measure', 'crankshaft_end_play'),
    input: '0.009\rfinish\r',
    writes: true,
  },
  { name: 'import', words: last('import', 'sides.csv', '--stage', 'machined'), writes: true },
];

const inShop = (act: (folder: string) => Promise<Ran>): Promise<Ran> =>
  inCopyOf(undefined, (folder) => {
    putIn(folder, SHOP);
    return act(folder);
  });

/** Of all calls that only read. */
let shared = '';
beforeAll(() => {
  shared = realpathSync(mkdtempSync(join(tmpdir(), 'tenths-shop-')));
  putIn(shared, SHOP);
});
afterAll(() => {
  const files = readdirSync(shared, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  rmSync(shared, { recursive: true });
  expect(files).toHaveLength(Object.keys(SHOP).length);
});

const run = (
  { words, input = '', writes = false }: Call,
  engine: string | undefined,
  within = '.',
  option = false,
): Promise<Ran> => {
  const act = (folder: string): Promise<Ran> => {
    const called = option ? [...words(undefined), '--engine', engine ?? ''] : words(engine);
    const there = called.map((word) => (word === 'sides.csv' && within !== '.' ? join(folder, word) : word));
    return callHere(there, { cwd: join(folder, within), input });
  };
  return writes ? inShop(act) : act(shared);
};

const expectDone = ({ exitCode, stderr }: Ran): void => {
  expect({ exitCode, stderr }).toMatchObject({ exitCode: 0 });
};

describe.each(CALLS)('tenths $name', (call) => {
  it.each([
    ['its path', PUMP],
    ['its folder', 'pump'],
    ['its folder in another case', 'PUMP'],
    ['a part of its folder', 'pum'],
    ['its name', 'Weir Pump no. 3'],
    ['its name in another case', 'weir pump NO. 3'],
    ['a part of its name', 'weir'],
  ])('finds an engine by %s', async (_, engine) => {
    expectDone(await run(call, engine));
    expectDone(await run(call, engine, '.', true));
  });

  it('takes the engine in whose folder it is called', async () => {
    expectDone(await run(call, undefined, PUMP));
    expectDone(await run(call, undefined, `${PUMP}/sessions`));
  });

  it('lists the engines where none is known so', async () => {
    const ran = await run(call, 'ferry', '.', true);
    expect(ran.exitCode).toBe(2);
    expect(ran.stderr).toContain('ferry');
    expect(ran.stderr).toContain('engines/hoist, engines/pump');
  });

  it('lists the engines where several may be meant', async () => {
    const ran = await run(call, 'o', '.', true);
    expect(ran.exitCode).toBe(2);
    expect(ran.stderr).toContain('engines/hoist, engines/pump');
  });
});

/** check looks at every engine below the folder, and explain at none. */
const OF_ONE = CALLS.filter(({ name }) => name !== 'check' && name !== 'explain');

it.each(OF_ONE)('tenths $name lists the engines where none is named', async (call) => {
  const ran = await run(call, undefined);
  expect(ran.exitCode).toBe(2);
  expect(ran.stderr).toContain('engines/hoist, engines/pump');
});

const WITH_WORD = CALLS.filter(({ name }) => name !== 'check' && name !== 'diff of sessions');

it.each(WITH_WORD)('tenths $name refuses an engine that is named twice', async ({ words }) => {
  const ran = await inShop((cwd) => callHere([...words('pump'), '--engine', 'pump'], { cwd }));
  expect(ran.exitCode).toBe(2);
  expect(ran.stderr).toMatch(/named twice/);
});

describe('what stands behind a characteristic', () => {
  const above = (...words: readonly string[]): Promise<Ran> => inShop((cwd) => callHere(words, { cwd }));

  it.each([
    ['its id', 'crankshaft_end_play'],
    ['its label', 'crankshaft end play'],
    ['its label in another case', 'Crankshaft End Play'],
    ['its id with hyphens', 'crankshaft-end-play'],
  ])('is found by %s', async (_, measure) => {
    expectDone(await above('trend', measure, 'pump'));
    expectDone(await above('explain', measure, 'pump'));
    expectDone(await above('new', 'session', 'pump', '--stage', 'trial', '--measure', measure));
  });

  /** Readings at positions: a session that holds some is written first. */
  const withSides = async (cwd: string, words: readonly string[], within = '.'): Promise<Ran> => {
    writeFileSync(
      join(cwd, PUMP, 'sessions/sides.yaml'),
      'kind: session\nstage: service\ndate: 2026-02-04\nreadings: [{ measure: rod_side_clearance, with: dial, at: { 1: 0.009, 3: 0.010 } }]\n',
    );
    return callHere(words, { cwd: join(cwd, within) });
  };

  it.each([
    ['explain', ['rod_side_clearance', '3'], PUMP],
    ['explain', ['rod side clearance', '3', 'weir'], '.'],
    ['trend', ['rod_side_clearance', '3'], PUMP],
    ['trend', ['rod_side_clearance', '3', 'pump'], '.'],
    ['trend', ['rod_side_clearance', 'pump', '3'], '.'],
    ['explain', ['rod_side_clearance', 'weir', '3'], '.'],
    ['trend', ['rod_side_clearance', '3', '--engine', 'pump'], '.'],
    ['trend', ['rod_side_clearance', 'pump', '--position', '3'], '.'],
  ])('tenths %s %j takes a bare position', async (command, words, within) => {
    const ran = await inShop((cwd) => withSides(cwd, [command, ...words], within));
    expectDone(ran);
    expect(ran.stdout).toMatch(/rod side clearance/);
    expect(ran.stdout).not.toContain('0.009');
  });

  it('the old order, the engine first, is still accepted', async () => {
    const [old, now] = [
      await above('explain', 'pump', 'crankshaft_end_play'),
      await above('explain', 'crankshaft_end_play', 'pump'),
    ];
    expectDone(old);
    expect(old.stdout).toBe(now.stdout);
  });
});

describe('a session', () => {
  const diff = (...words: readonly string[]): Promise<Ran> =>
    inShop((cwd) => callHere(['diff', ...words], { cwd }));

  it.each([
    ['their stages', ['teardown', 'rebuild', 'pump']],
    ['parts of their names', ['TEARD', 'rebu', 'pump']],
    ['their files', ['teardown.yaml', 'rebuild.yaml', 'pump']],
    [
      'their paths, which say the engine',
      ['engines/pump/sessions/teardown.yaml', 'engines/pump/sessions/rebuild.yaml'],
    ],
  ])('two of them are compared by %s', async (_, words) => {
    const ran = await diff(...words);
    expectDone(ran);
    expect(ran.stdout).toContain('teardown 2026-02-03');
  });

  it.each(['teardown', 'teardown.yaml', 'engines/pump/sessions/teardown.yaml', 'TEAR'])(
    'is checked and explained as %s',
    async (session) => {
      expectDone(await inShop((cwd) => callHere(['check', 'pump', '--session', session], { cwd })));
      expectDone(
        await inShop((cwd) =>
          callHere(['explain', 'crankshaft_end_play', 'pump', '--session', session], { cwd }),
        ),
      );
    },
  );
});
