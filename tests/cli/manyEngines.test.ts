import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runLine } from '../program.ts';
import { put } from '../shell/gitShop.ts';
import { call } from './call.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from './fourCylinder.ts';

/** More than one thread checks. */
const ENGINES = 64;

/** Some of them are out, and no two are alike. */
const SESSION = (number: number): string =>
  `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, with: dial, value: ${(0.004 + number * 0.0005).toFixed(4)} }]\n`;

const shop = mkdtempSync(join(tmpdir(), 'tenths-many-'));
const pump = (number: number): string => `engines/pump-${String(number).padStart(4, '0')}`;
put(shop, 'shop.yaml', SHOP);
put(shop, 'instruments.yaml', INSTRUMENTS);
for (let number = 1; number <= ENGINES; number++) {
  put(shop, `${pump(number)}/engine.yaml`, ENGINE);
  put(shop, `${pump(number)}/limits.yaml`, LIMITS);
  put(shop, `${pump(number)}/teardown.yaml`, SESSION(number));
}
// Shared documents have their faults once, an engine that cannot be judged stands among the others.
put(shop, 'joint.yaml', 'kind: torque\njoint: rod caps\npases: 3\n');
put(shop, `${pump(40)}/limits.yaml`, 'kind: limits\nlimits: 3\n');
afterAll(() => rmSync(shop, { recursive: true, force: true }));

describe('a shop of more engines than one thread checks', () => {
  it.each([['text'], ['json']])('prints as %s what one thread prints', async (format) => {
    const words = ['check', '--format', format];
    // A call of the tests has no threads.
    const alone = await call(shop, words);
    const { stdout, stderr, exitCode } = await runLine(`tenths ${words.join(' ')}`, { cwd: shop });
    expect({ out: stdout, err: stderr, exit: exitCode }).toEqual(alone);
    expect(exitCode).toBe(2);
    expect(stdout.match(/pases/g)).toHaveLength(format === 'text' ? 2 : 1);
    expect(stdout).toContain(format === 'text' ? 'pump-0064' : '"path":"engines/pump-0064"');
  });
});
