import { mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { callHere } from '../../inProcess.ts';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const bench = benchFolder();
const at = (...path: readonly string[]): string => join(bench.folder(), ...path);

const filesIn = <Found>(folder: string, lookAt: (path: string) => Found): ReadonlyMap<string, Found> =>
  new Map(
    readdirSync(at(folder), { recursive: true, encoding: 'utf8' })
      .sort()
      .filter((path) => statSync(at(folder, path)).isFile())
      .map((path) => [path, lookAt(at(folder, path))]),
  );

/** All that a call writes and says; `kept` with what earlier calls of the test have kept. */
async function written(kept: 'kept' | 'anew', ...words: readonly string[]) {
  rmSync(at('shop/board'), { recursive: true, force: true });
  const said = await callHere(['report', '--all', '--to', 'board', ...words], {
    cwd: at('shop'),
    ...(kept === 'kept' ? { cache: { folder: at('results'), build: 'of the tests' } } : {}),
  });
  return { said, pages: filesIn('shop/board', (path) => readFileSync(path, 'utf8')) };
}

/** A file that is written anew is another. */
const keptFiles = (): ReadonlyMap<string, number> => filesIn('results', (path) => statSync(path).ino);

const session = (value: string): string => `kind: session
stage: teardown
date: 2026-02-03
fitted: { crankshaft: { mark: G6-1, condition: used } }
readings: [{ measure: crankshaft_end_play, with: dial, value: ${value} }]
`;

/** Engines that are out, broken, without a session, and not to be judged. */
function putShop(): void {
  mkdirSync(at('results'));
  bench.put({
    'shop/shop.yaml': SHOP,
    'shop/instruments.yaml': INSTRUMENTS,
    'shop/engines/out/engine.yaml': `${ENGINE}job: { customer: Upper Mill }\n`,
    'shop/engines/out/limits.yaml': LIMITS,
    'shop/engines/out/1.yaml': session('0.030'),
    'shop/engines/broken/engine.yaml': ENGINE.replace('layout:', 'lay_out:'),
    'shop/engines/broken/1.yaml': session('0.008'),
    'shop/engines/new/engine.yaml': ENGINE,
    'shop/engines/slip/engine.yaml': ENGINE,
    'shop/engines/slip/limits.yaml': LIMITS,
    'shop/engines/slip/1.yaml': session('0.008'),
    'shop/engines/slip/2.yaml': 'kind: session\nstage: rebild\ndate: 2026-02-04\n',
  });
}

it('is the same to the byte from what an earlier call kept, and works no engine out again', async () => {
  putShop();
  const anew = await written('anew');
  expect(anew.said.exitCode).toBe(2);
  expect([...anew.pages.keys()]).toContain('engines/out.html');
  expect(await written('kept')).toEqual(anew);
  const before = keptFiles();
  expect(before.size).toBe(4);
  expect(await written('kept')).toEqual(anew);
  expect(keptFiles()).toEqual(before);
});

it('shows what changed since, and what only this call asks for', async () => {
  putShop();
  const before = await written('kept');
  bench.put({ 'shop/engines/out/1.yaml': session('0.009') });
  const changed = await written('anew');
  expect(changed).not.toEqual(before);
  expect(await written('kept')).toEqual(changed);
  const named = await written('anew', '--with-customers');
  expect(named.pages.get('index.html')).toContain('Upper Mill');
  expect(await written('kept', '--with-customers')).toEqual(named);
});

it('neither takes nor keeps a result with --no-cache', async () => {
  putShop();
  await written('kept', '--no-cache');
  expect(keptFiles().size).toBe(0);
});
