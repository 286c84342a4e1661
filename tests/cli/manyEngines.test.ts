import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CHECK_FORMATS } from '../../src/output/check/formats/index.ts';
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
  const formats = Object.keys(CHECK_FORMATS);
  const into = (folder: string): readonly string[] => [
    'check',
    ...['--known', 'known.json'],
    ...formats.flatMap((format) => ['--format', `${format}:${folder}-${format}`]),
  ];
  const written = (folder: string, format: string): string =>
    readFileSync(join(shop, `${folder}-${format}`), 'utf8');

  it('writes in every format what one thread writes', async () => {
    await call(shop, ['check', pump(3), pump(30), '--known', 'known.json', '--update-known']);
    // A call of the tests has no threads.
    const alone = await call(shop, into('alone'));
    const { stdout, stderr, exitCode } = await runLine(`tenths ${into('shared').join(' ')}`, { cwd: shop });
    expect({ out: stdout, err: stderr, exit: exitCode }).toEqual(alone);
    expect(alone).toEqual({ out: '', err: '', exit: 2 });
    for (const format of formats) expect(written('shared', format)).toBe(written('alone', format));
    expect(written('shared', 'text').match(/pases/g)).toHaveLength(2);
    expect(written('shared', 'text')).toContain('pump-0064');
    expect(written('shared', 'json').match(/pases/g)).toHaveLength(1);
    expect(written('shared', 'json')).toContain('"path":"engines/pump-0064"');
  });
});
