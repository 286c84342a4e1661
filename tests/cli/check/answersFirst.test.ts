import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { put } from '../../shell/gitShop.ts';
import { call } from '../call.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const shop = mkdtempSync(join(tmpdir(), 'tenths-answers-'));
const demo = mkdtempSync(join(tmpdir(), 'tenths-demo-'));
cpSync(join(import.meta.dirname, '../../../examples'), demo, { recursive: true });
put(shop, 'shop.yaml', SHOP);
put(shop, 'instruments.yaml', INSTRUMENTS);

const ENGINES = { Alder: '0.009', Birch: '0.030', Cedar: '0.015', Doubtful: '0.0129' } as const;
for (const [name, endPlay] of Object.entries(ENGINES)) {
  put(shop, `${name}/engine.yaml`, ENGINE.replace(/^name: .*$/m, `name: ${name}`));
  put(shop, `${name}/limits.yaml`, LIMITS);
  put(
    shop,
    `${name}/trial.yaml`,
    `kind: session\nstage: trial\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, with: dial, value: ${endPlay} }]\n`,
  );
}
afterAll(() => {
  rmSync(shop, { recursive: true, force: true });
  rmSync(demo, { recursive: true, force: true });
});

const linesOf = async (folder: string, words: readonly string[], columns?: number) =>
  (await call(folder, ['check', ...words], columns)).out.trimEnd().split('\n');

describe('a check of several engines', () => {
  it('begins with a line for each, the worst first', async () => {
    const lines = await linesOf(shop, ['--rule', 'guarded']);
    const answers = lines.slice(0, lines.indexOf(''));
    expect(answers.map((each) => each.split(':')[0])).toEqual(['Birch', 'Cedar', 'Doubtful', 'Alder']);
    expect(answers[0]).toMatch(/^Birch: 1 out: crankshaft end play/);
  });

  it('shows what is wrong and not what is well', async () => {
    const lines = await linesOf(shop, ['--rule', 'guarded']);
    expect(lines.filter((each) => /^Birch {2}/.test(each))).toHaveLength(1);
    expect(lines.filter((each) => /^Alder {2}/.test(each))).toHaveLength(0);
  });

  it('shows all with --detail, after the answers', async () => {
    const lines = await linesOf(shop, ['--rule', 'guarded', '--detail']);
    expect(lines[0]).toMatch(/^Birch: /);
    for (const name of Object.keys(ENGINES)) expect(lines).toContain(`${name}  ${name}`);
  });

  it('is the same at a terminal and in a pipe', async () => {
    expect(await linesOf(shop, [], 400)).toEqual(await linesOf(shop, []));
  });

  it('gives one engine alone in full', async () => {
    const lines = await linesOf(shop, ['Alder']);
    expect(lines[0]).toBe('Alder  Alder');
    expect(lines.join('\n')).toContain('crankshaft end play  0.009 in  ok');
  });
});

describe('the example shop', () => {
  it('fits a screen of 80 by 40', async () => {
    const lines = await linesOf(demo, [], 80);
    expect(lines.length).toBeLessThanOrEqual(40);
    expect(Math.max(...lines.map((each) => each.length))).toBeLessThanOrEqual(80);
  });

  it('names what is out in the first five lines', async () => {
    const path = 'engines/drainage-pump-8/sessions/2026-06-20-service.yaml';
    put(
      demo,
      path,
      'kind: session\nstage: rebuild\ndate: 2026-06-20\nreadings: [{ measure: crankshaft_end_play, value: 0.9 }]\n',
    );
    const lines = await linesOf(demo, [], 80);
    expect(lines.slice(0, 5).join('\n')).toContain('Drainage pump 8: 1 out: crankshaft end play');
  });
});
