import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
// @ts-expect-error: the bench is plain JavaScript
import { writeShop } from '../../bin/bench/shop.js';
import { runLine } from '../program.ts';
import { call } from './call.ts';

/** More than are shared among threads. */
const ENGINES = 64;

const shop = mkdtempSync(join(tmpdir(), 'tenths-many-'));
writeShop(shop, ENGINES);
// Shared documents have their faults once, an engine that cannot be judged stands among the others.
writeFileSync(join(shop, 'joint.yaml'), 'kind: torque\njoint: rod caps\npases: 3\n');
writeFileSync(join(shop, 'engines', 'pump-0040', 'limits.yaml'), 'kind: limits\nlimits: 3\n');
afterAll(() => rmSync(shop, { recursive: true, force: true }));

describe('a shop of more engines than one thread checks', () => {
  it.each([['text'], ['json']])(
    'prints as %s what one thread prints',
    async (format) => {
      const words = ['check', '--format', format];
      // A call of the tests has no threads.
      const alone = await call(shop, words);
      const { stdout, stderr, exitCode } = await runLine(`tenths ${words.join(' ')}`, { cwd: shop });
      expect({ out: stdout, err: stderr, exit: exitCode }).toEqual(alone);
      expect(exitCode).toBe(2);
      expect(stdout.match(/pases/g)).toHaveLength(format === 'text' ? 2 : 1);
      expect(stdout).toContain(format === 'text' ? 'pump-0064' : '"path":"engines/pump-0064"');
    },
    60_000,
  );
});
