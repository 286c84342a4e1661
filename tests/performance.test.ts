import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from './program.ts';

interface Bench {
  readonly AIMS: readonly { what: string; most: number; of: string }[];
}

interface Growth {
  readonly GROWING: readonly { what: string; sizes: readonly number[] }[];
  readonly powerOf: (sizes: readonly number[], values: readonly number[]) => number;
  readonly mostFor: (sizes: readonly number[]) => number;
}

const fromBench = (name: string) => import(join(projectFolder, 'bin/bench', name));
const { AIMS }: Bench = await fromBench('aims.js');
const { GROWING, powerOf, mostFor }: Growth = await fromBench('growth.js');
const page = readFileSync(join(projectFolder, 'docs/performance.md'), 'utf8');

describe('the page about speed', () => {
  it('has the aims that the bench has, and no others', () => {
    const aims = page.slice(page.indexOf('## Aims'), page.indexOf('## Tables'));
    const lines = AIMS.map(({ what, most, of }) => `| ${what} | ${most} of ${of} |`);
    expect(aims.match(/^\| .*\d.* \|$/gm)).toEqual(lines);
  });

  it('tells of everything that may grow', () => {
    const growth = page.slice(page.indexOf('## Growth'));
    for (const { what } of GROWING) expect(growth).toMatch(new RegExp(`^\\| ${what} \\|`, 'm'));
  });
});

describe('growth', () => {
  const start = 150;
  it.each(GROWING.map(({ what, sizes }) => [what, sizes] as const))(
    'of %s has the power it has',
    (_, sizes) => {
      const grown = (time: (size: number) => number) =>
        powerOf(
          sizes,
          sizes.map((size) => start + time(size)),
        );
      expect(grown((size) => 2 * size)).toBeCloseTo(1, 1);
      expect(grown((size) => size * Math.log2(size))).toBeLessThan(mostFor(sizes));
      expect(grown((size) => size ** 1.5)).toBeGreaterThan(mostFor(sizes));
      expect(grown((size) => size ** 2)).toBeGreaterThan(1.8);
    },
  );
});
