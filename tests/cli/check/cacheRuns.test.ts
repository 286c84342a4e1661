import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { callHere } from '../../inProcess.ts';
import { builtProgram, runLine, SURROUNDINGS } from '../../program.ts';
import { isLong, some } from '../../propertyRuns.ts';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const bench = benchFolder();
const at = (...path: readonly string[]): string => join(bench.folder(), ...path);

/** The built program, which keeps its results below `kept`. */
const check = (...words: readonly string[]) =>
  runLine(`tenths check ${words.join(' ')}`, { cwd: at('shop'), env: { XDG_CACHE_HOME: at('kept') } });

/** What a check prints that keeps nothing, and has neither a process of its own nor threads. */
const plain = (...words: readonly string[]) => callHere(['check', ...words], { cwd: at('shop') });

/** Engines of which no two are alike, and some are out. */
function putShop(engines: number): void {
  mkdirSync(at('kept'));
  bench.put({ 'shop/shop.yaml': SHOP, 'shop/instruments.yaml': INSTRUMENTS });
  for (let number = 0; number < engines; number++) {
    const value = (0.004 + (number % 60) * 0.0003).toFixed(4);
    const reading = `{ measure: crankshaft_end_play, with: dial, value: ${value} }`;
    const folder = `shop/engines/pump-${number}`;
    bench.put({
      [`${folder}/engine.yaml`]: ENGINE,
      [`${folder}/limits.yaml`]: LIMITS,
      [`${folder}/1.yaml`]: `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [${reading}]\n`,
    });
  }
}

/** Fewer than threads would share. */
const A_FEW = 12;

/** What every entry holds: its digest, what it stands on, the result. A torn one does not parse. */
function entries(): readonly unknown[] {
  return readdirSync(at('kept'), { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile() && each.parentPath.includes('/results/') && !each.name.endsWith('.part'))
    .map(({ parentPath, name }) => readFileSync(join(parentPath, name), 'utf8').split('\n').slice(1))
    .map((lines) => lines.map((line) => JSON.parse(line)));
}

describe('what runs have kept', () => {
  it('is right after two runs at once', async () => {
    putShop(A_FEW);
    const cold = await check('--no-cache');
    expect(entries()).toEqual([]);
    expect(await Promise.all([check(), check()])).toEqual([cold, cold]);
    expect(entries()).toHaveLength(A_FEW);
    expect(await check()).toEqual(cold);
  });

  it('is right or absent after runs that were killed', async () => {
    putShop(A_FEW);
    const cold = await plain();
    const times = some(100, 2);
    for (let run = 1; run <= times; run++) {
      const env = { ...SURROUNDINGS, XDG_CACHE_HOME: at('kept') };
      const words = [builtProgram(), 'check', ...(run % 2 === 0 ? ['--format', 'json'] : [])];
      const child = spawn(process.execPath, words, { cwd: at('shop'), env, stdio: 'ignore' });
      const ended = new Promise((resolve) => child.on('close', resolve));
      // From before the first entry until after the last, whatever the machine does.
      await Promise.race([setTimeout((300 * run) / times), ended]);
      child.kill('SIGKILL');
      await ended;
      for (const entry of entries()) expect(entry).toHaveLength(2);
    }
    expect(await check()).toEqual(cold);
  });

  it('is right for a shop of many engines that threads share', async () => {
    putShop(isLong ? 1000 : 61);
    for (const words of [['--format', 'json', '--all'], ...(isLong ? [[]] : [])]) {
      const cold = await plain(...words);
      for (const _ of ['first', 'second']) expect(await check(...words)).toEqual(cold);
    }
  });
});
