import { spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { callHere } from '../inProcess.ts';
import { builtProgram, SURROUNDINGS } from '../program.ts';
import { benchFolder } from './calling.ts';
import { ENGINE, LIMITS, SHOP } from './fourCylinder.ts';

const bench = benchFolder();

function putEngines(count: number): void {
  bench.put({ 'shop.yaml': SHOP });
  for (let number = 0; number < count; number++)
    bench.put({
      [`engines/p${number}/engine.yaml`]: ENGINE,
      [`engines/p${number}/limits.yaml`]: LIMITS,
      [`engines/p${number}/1.yaml`]: 'kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: []\n',
    });
}

/** A run in which so many milliseconds pass between two looks at the clock. */
async function told(words: readonly string[], step: number, columns?: number): Promise<readonly string[]> {
  let now = 0;
  const elapsed = (): number => {
    now += step;
    return now;
  };
  const options = columns === undefined ? {} : { columns };
  const { stderr } = await callHere(words, { cwd: bench.folder(), elapsed, ...options });
  return stderr.split('\n').filter((line) => / of \d+ engines$/.test(line));
}

describe('a run through many engines', () => {
  it('says now and then how far it is, to somebody at a terminal', async () => {
    putEngines(6);
    expect(await told(['check'], 600, 80)).toEqual(['1 of 6 engines', '3 of 6 engines', '5 of 6 engines']);
    expect(await told(['report', '--all', '--to', 'board'], 600, 80)).toHaveLength(3);
  });

  it('says nothing where it is quick, into a pipe, and between the lines of its own output', async () => {
    putEngines(6);
    expect(await told(['check'], 10, 80)).toEqual([]);
    expect(await told(['check'], 600)).toEqual([]);
    expect(await told(['check', '--format', 'lines'], 600, 80)).toEqual([]);
    expect(await told(['check', '--format', 'lines:x.txt', '--format', 'text'], 600, 80)).not.toEqual([]);
  });

  it('leaves no half file, and nothing else, where it is interrupted', async () => {
    putEngines(120);
    const child = spawn(process.execPath, [builtProgram(), 'check', '--format', 'json:out.json'], {
      cwd: bench.folder(),
      env: { ...SURROUNDINGS, XDG_CACHE_HOME: join(bench.folder(), 'kept') },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let trouble = '';
    child.stderr.on('data', (chunk) => {
      trouble += chunk;
    });
    const ended = new Promise((resolve) => child.on('close', (code, signal) => resolve([code, signal])));
    setTimeout(() => child.kill('SIGINT'), 250);
    // A shell makes 130 of it.
    expect(await ended).toEqual([null, 'SIGINT']);
    expect(trouble).toBe('');
    expect(existsSync(join(bench.folder(), 'out.json'))).toBe(false);
    expect(readdirSync(bench.folder()).sort()).toEqual(['engines', 'shop.yaml']);
  });
});
