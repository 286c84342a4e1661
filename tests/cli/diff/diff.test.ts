import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { diffSchema } from '../../../src/output/schema/diffSchema.ts';
import { commit, git, put } from '../../shell/gitShop.ts';
import { FAMILY, PUMP, readings } from '../benchShop.ts';
import { call } from '../call.ts';
import { withBenchShop } from '../gitHere.ts';

const here = withBenchShop();

const validate = new Ajv({ strict: true }).compile(diffSchema());

interface Json {
  readonly exit: number;
  readonly a: { readonly kind: string; readonly name: string; readonly commit: string | null };
  readonly b: Json['a'];
  readonly engines: readonly {
    readonly path: string;
    readonly rows: readonly {
      readonly position: string;
      readonly state: string;
      readonly crossed: string | null;
    }[];
    readonly limits: readonly unknown[];
    readonly rewritten: readonly unknown[];
  }[];
}

async function json(...words: readonly string[]): Promise<Json> {
  const { out } = await call(here.shop, ['diff', '--format', 'json', ...words]);
  return JSON.parse(out) as Json;
}

/** Each engine with its rows as `position state crossed`. */
const told = ({ engines }: Json) =>
  Object.fromEntries(
    engines.map(({ path, rows }) => [
      path,
      rows.map(({ position, state, crossed }) => [position, state, crossed].filter(Boolean).join(' ')),
    ]),
  );

const REBUILT = ['1 real', '2 real in'];

describe('two sessions', () => {
  it.each([
    [['teardown', 'rebuild', PUMP]],
    [['teardown', 'rebuild', 'pump é no 2']],
    [['teardown', 'rebuild', '--engine', 'pump']],
    [[`${PUMP}/sessions/teardown.yaml`, `${PUMP}/sessions/rebuild.yaml`, PUMP]],
  ])('%j', async (words) => {
    const found = await json(...words);
    expect(found).toMatchObject({
      a: { kind: 'session', name: 'teardown 2026-02-03', commit: null },
      b: { kind: 'session', name: 'rebuild 2026-03-14', commit: null },
      exit: 0,
    });
    expect(told(found)).toEqual({ [PUMP]: REBUILT });
  });

  it('of the engine around the working directory need no name', async () => {
    const { out } = await call(join(here.shop, PUMP), ['diff', 'teardown', 'rebuild']);
    expect(out).toContain('teardown 2026-02-03 → rebuild 2026-03-14');
  });

  it('come before a branch of the same name, which its full name still reaches', async () => {
    git(here.shop, 'branch', 'teardown', 'HEAD~2');
    git(here.shop, 'branch', 'rebuild', 'HEAD~1');
    expect((await json('teardown', 'rebuild', PUMP)).a.kind).toBe('session');
    expect((await json('refs/heads/teardown', 'refs/heads/rebuild', PUMP)).a.kind).toBe('revision');
    // Of several engines a session cannot be meant.
    expect((await json('teardown', 'rebuild')).a.kind).toBe('revision');
  });

  it.each([
    [['teardown', PUMP], 'diff compares two sessions'],
    [['teardown', 'trial', PUMP], 'unknown session trial'],
    [['teardown', 'rebuild'], 'this folder may be any of several engines'],
    [['a', 'b', 'c', 'd'], 'too many words'],
    [['teardown', 'rebuild', 'HEAD'], 'HEAD is not an engine, and no more than two sides are compared'],
  ])('%j: %s', async (words, message) => {
    const { err, out, exit } = await call(here.shop, ['diff', ...words]);
    expect([exit, out]).toEqual([2, '']);
    expect(err).toContain(message);
  });
});

describe('two revisions', () => {
  it('are of every engine that something changed for', async () => {
    const found = await json('HEAD~2', 'HEAD');
    expect(told(found)).toEqual({ [PUMP]: REBUILT, 'engines/mill': ['1 within'] });
    const commits = ['HEAD~2', 'HEAD'].map((name) => git(here.shop, 'rev-parse', name));
    expect([found.a, found.b]).toEqual([
      { kind: 'revision', name: 'HEAD~2', commit: commits[0] },
      { kind: 'revision', name: 'HEAD', commit: commits[1] },
    ]);
    expect(told(await json('HEAD~1', 'HEAD'))).toEqual({ 'engines/mill': ['1 within'] });
    expect(told(await json('HEAD', 'HEAD'))).toEqual({});
    expect(told(await json('HEAD', 'HEAD', '--all'))).toEqual({
      'engines/mill': ['1 same'],
      [PUMP]: ['1 same', '2 same'],
    });
  });

  it.each([
    ['HEAD~2', 'HEAD', PUMP],
    ['HEAD~2', 'HEAD', '--engine', 'pump'],
    [`HEAD~2:${PUMP}`, `HEAD:${PUMP}`],
    ['HEAD~2', `HEAD:${PUMP}`],
    [`HEAD~2:./${PUMP}`],
    ['HEAD~2', PUMP],
  ])('%s %s %s', async (...words) => {
    expect(told(await json(...words))).toEqual({ [PUMP]: REBUILT });
  });

  it('with the working tree as the second, in which an edit counts that was not committed', async () => {
    put(
      here.shop,
      `${PUMP}/sessions/rebuild.yaml`,
      readings('rebuild', '2026-03-14', '1: 0.0030, 2: 0.0051'),
    );
    const found = await json('HEAD');
    expect(found.b).toEqual({ kind: 'worktree', name: 'working tree', commit: null });
    expect(told(found)).toEqual({ [PUMP]: ['1 same', '2 real out'] });
  });

  it('show what an engine had that is gone, and one that was not there yet', async () => {
    git(here.shop, 'rm', '-rq', 'engines/mill');
    commit(here.shop, 'Sold');
    expect(told(await json('HEAD~1', 'HEAD'))).toEqual({ 'engines/mill': ['1 disappeared'] });
    expect(told(await json('HEAD', 'HEAD~1'))).toEqual({ 'engines/mill': ['1 appeared'] });
    expect(told(await json('HEAD~1', 'HEAD', 'engines/mill'))).toEqual({ 'engines/mill': ['1 disappeared'] });
  });

  it.each([
    [['HEAD~1', 'HEAD']],
    [['HEAD~1', 'HEAD', '--engine', 'mill-west']],
    [['HEAD~1', 'HEAD', '--engine', 'engines/mill-west']],
  ])('follow an engine by its name, whose folder was moved: %j', async (words) => {
    git(here.shop, 'mv', 'engines/mill', 'engines/mill-west');
    commit(here.shop, 'Moved');
    expect(told(await json(...words))).toEqual({ 'engines/mill-west': ['1 same'] });
  });

  it('follow an engine that was moved, named on both sides', async () => {
    git(here.shop, 'mv', PUMP, 'engines/pump-2');
    commit(here.shop, 'Move');
    expect(told(await json(`HEAD~3:${PUMP}`, 'HEAD:engines/pump-2'))).toEqual({ 'engines/pump-2': REBUILT });
  });

  it('tell that the record of a session was changed that a later one measured anew, wherever it lies', async () => {
    git(here.shop, 'mv', PUMP, 'engines/pump-2');
    const path = 'engines/pump-2/sessions/teardown.yaml';
    put(here.shop, path, readings('teardown', '2026-02-03', '1: 0.0040, 2: 0.0064'));
    commit(here.shop, 'Move, and put right');
    const words = [`HEAD~1:${PUMP}`, 'HEAD:engines/pump-2'];
    const found = await json(...words);
    expect(told(found)).toEqual({ 'engines/pump-2': ['1 same', '2 same'] });
    expect(found.engines[0]?.rewritten).toEqual([
      {
        state: 'edited',
        session: path,
        readings: [
          {
            measure: 'main_bearing_clearance',
            position: '2',
            at: { main: '2' },
            a: ['0.0056'],
            b: ['0.0064'],
          },
        ],
      },
    ]);
    const line = 'teardown: main bearing clearance 2  0.0056 → 0.0064';
    const title = 'changed in sessions that later ones measured anew';
    const text = await call(here.shop, ['diff', ...words, '--exit-code']);
    expect([text.exit, text.out]).toEqual([1, expect.stringContaining(`${title}\n  ${line}\n`)]);
    const { out } = await call(here.shop, ['diff', ...words, '--format', 'markdown']);
    expect(out).toContain(`#### ${title}\n\n- teardown: main bearing clearance 2`);
  });

  it('tell a session that is gone, and one that came in between, by what it held', async () => {
    git(here.shop, 'rm', '-q', `${PUMP}/sessions/teardown.yaml`);
    const gone = await call(here.shop, ['diff', 'HEAD']);
    expect(gone.out).toContain('\n  teardown: the session is gone, with readings at 2 positions\n');
    commit(here.shop, 'Lost');
    const back = await call(here.shop, ['diff', 'HEAD', 'HEAD~1']);
    expect(back.out).toContain('\n  teardown: a new session, with readings at 2 positions\n');
  });

  it('of one session file compare that session', async () => {
    put(
      here.shop,
      `${PUMP}/sessions/teardown.yaml`,
      readings('teardown', '2026-02-03', '1: 0.0040, 2: 0.0046'),
    );
    const path = `${PUMP}/sessions/teardown.yaml`;
    expect(told(await json(`HEAD:${path}`))).toEqual({ [PUMP]: ['1 same', '2 real in'] });
  });

  it('tell limits that changed apart', async () => {
    put(here.shop, 'limits/family.yaml', FAMILY.replace('0.0038', '0.0030'));
    const found = await json('HEAD', PUMP);
    expect(told(found)).toEqual({ [PUMP]: ['1 same', '2 same out'] });
    expect(found.engines[0]?.limits).toHaveLength(2);
    expect((await call(here.shop, ['diff', 'HEAD'])).out).toContain('new max 0.0038 → 0.0030 in');
  });

  it('of which one cannot be read end with 2, and say where; the other engine is compared all the same', async () => {
    put(here.shop, `${PUMP}/limits.yaml`, 'kind: [broken');
    put(here.shop, 'engines/mill/second.yaml', readings('service', '2026-04-05', '1: 0.0051'));
    const { out, err, exit } = await call(here.shop, ['diff', 'HEAD']);
    expect(exit).toBe(2);
    expect(err).toContain(`${PUMP}/limits.yaml:`);
    expect(out).toContain('newly out');
    expect(err.split('document/').length).toBe(2);
    expect(out).not.toContain('Pump é');
    expect(out).toContain(`${PUMP}: not compared, since a document has a problem in working tree\n`);
  });

  it('of which a session cannot be read on one side tell no change of that engine, in any format', async () => {
    put(
      here.shop,
      `${PUMP}/sessions/rebuild.yaml`,
      readings('rebuild', '2026-03-14', '1: 0.0030, 2: O.0031'),
    );
    commit(here.shop, 'A slip');
    for (const words of [['HEAD~1', 'HEAD'], ['HEAD', 'HEAD~1'], ['HEAD~1'], ['HEAD~1', 'HEAD', PUMP]]) {
      const broken = words.length === 1 ? 'working tree' : 'HEAD';
      const formats = ['text', 'markdown:told.md', 'json:told.json'].flatMap((each) => ['--format', each]);
      const { out, exit } = await call(here.shop, ['diff', ...words, ...formats]);
      const line = `${PUMP}: not compared, since a document has a problem in ${broken}`;
      expect([exit, out]).toEqual([2, `${line}\n`]);
      const written = (name: string): string => readFileSync(join(here.shop, name), 'utf8');
      expect(written('told.md').split('\n').length).toBe(2);
      const inJson = JSON.parse(written('told.json'));
      expect(inJson).toMatchObject({ exit: 2, engines: [], not_compared: [{ path: PUMP, sides: [broken] }] });
      expect(validate(inJson)).toBe(true);
    }
  });

  it('of one session that cannot be read on one side are not those of the engine', async () => {
    const path = `${PUMP}/sessions/teardown.yaml`;
    put(here.shop, path, readings('teardown', '2026-02-03', '1: O.0040'));
    const { out, exit } = await call(here.shop, ['diff', `HEAD:${path}`]);
    expect([exit, out]).toEqual([
      2,
      `${PUMP}: not compared, since a document has a problem in working tree\n`,
    ]);
    const other = `${PUMP}/sessions/rebuild.yaml`;
    put(here.shop, other, readings('rebuild', '2026-03-14', '1: 0.0040, 2: 0.0031'));
    expect(told(await json(`HEAD:${other}`))).toEqual({ [PUMP]: ['1 real out', '2 same'] });
  });
});

describe('the exit code', () => {
  it.each([
    [['HEAD~2', 'HEAD'], 1],
    [['HEAD', 'HEAD'], 0],
    [['HEAD', 'HEAD', '--all'], 0],
    [['teardown', 'rebuild', PUMP], 1],
    [['teardown', 'teardown', PUMP], 0],
  ])('of %j is %d where it is asked for', async (words, expected) => {
    expect((await call(here.shop, ['diff', ...words, '--exit-code'])).exit).toBe(expected);
    expect((await call(here.shop, ['diff', ...words])).exit).toBe(0);
  });
});

it('JSON is as its schema says', async () => {
  put(
    here.shop,
    `${PUMP}/sessions/teardown.yaml`,
    readings('teardown', '2026-02-03', '1: 0.0040, 2: 0.0064'),
  );
  expect((await json('HEAD')).engines[0]?.rewritten).toHaveLength(1);
  for (const words of [
    ['HEAD~2'],
    ['HEAD', 'HEAD'],
    ['teardown', 'rebuild', PUMP],
    ['HEAD', 'HEAD~2', '--all'],
    ['HEAD'],
  ]) {
    validate(await json(...words));
    expect(validate.errors).toBe(null);
  }
});

it('Markdown holds nothing of a document that could be markup', async () => {
  const evil = '<img src=x onerror=alert(1)> @user #1 [a](javascript:b) `c` | d';
  put(
    here.shop,
    `${PUMP}/engine.yaml`,
    `kind: engine\nname: '${evil}'\nlayout: { cylinders: 1, mains: 2, crankpins: 1 }\nlabels: { main: { 2: '| <b>' } }\n`,
  );
  const { out } = await call(here.shop, ['diff', 'HEAD~2', '--format', 'markdown']);
  expect(out).toContain('&#60;img src=x onerror=alert(1)&#62; &#64;&#8203;user &#35;&#8203;1');
  expect(out).not.toMatch(/<|@|\]\(|`/);
  const columns = out
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) => line.split('|').length);
  expect(new Set(columns)).toEqual(new Set([8]));
});
