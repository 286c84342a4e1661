import { describe, expect, it } from 'vitest';
import { call } from '../call.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();

const JOURNALS = Array.from({ length: 13 }, (_, index) => index + 1);
const ENGINES = Array.from({ length: 25 }, (_, index) => `Engine ${String(index + 1).padStart(2, '0')}`);

/** Every other engine has journals that are out, one to twelve of them, in no order of its name. */
const outOf = (index: number): number => (index % 2 === 1 ? ((((index - 1) / 2) * 7) % 12) + 1 : 0);

/** So many engines that a screen of 40 lines has room for the answers and little else. All figures are invented. */
function putShop(outs: (index: number) => number): void {
  bench.put({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'limits.yaml':
      'kind: limits\nsource: Invented for these tests.\nlimits: { main_journal_diameter: { new: 3.2475 to 3.2485 } }\n',
    ...Object.fromEntries(
      ENGINES.flatMap((name, index) => {
        const read = JOURNALS.map((each) => `${each}: ${each <= outs(index) ? '3.2470' : '3.2480'}`);
        return [
          [`${name}/engine.yaml`, `kind: engine\nname: ${name}\nlayout: { mains: ${JOURNALS.length} }\n`],
          [
            `${name}/trial.yaml`,
            `kind: session\nstage: trial\ndate: 2026-02-03\nreadings: [{ measure: main_journal_diameter, at: { ${read.join(', ')} } }]\n`,
          ],
        ] as const;
      }),
    ),
  });
}

const screenOf = async (): Promise<readonly string[]> =>
  (await call(bench.folder(), ['check'], 80)).out.trimEnd().split('\n');

describe('a check of 25 engines on a screen of 80 by 40', () => {
  it('fits where all are well, and names every one', async () => {
    putShop(() => 0);
    const lines = await screenOf();
    expect(lines.length).toBeLessThanOrEqual(40);
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(80);
    expect(lines.slice(0, ENGINES.length)).toEqual(ENGINES.map((name) => `${name}: ${JOURNALS.length} ok`));
  });

  it('names the worst of twelve that are not in its first five lines, and all twelve before those that are well', async () => {
    putShop(outOf);
    const lines = await screenOf();
    const worstFirst = ENGINES.map((name, index) => ({ name, out: outOf(index) }))
      .filter(({ out }) => out > 0)
      .sort((a, b) => b.out - a.out);
    expect(worstFirst.map(({ out }) => out)).toEqual(JOURNALS.slice(0, 12).reverse());
    const answers = lines.filter((line) => /^Engine \d\d: /.test(line));
    expect(answers.slice(0, 12).map((line) => /^(.*: \d+ out)/.exec(line)?.[1])).toEqual(
      worstFirst.map(({ name, out }) => `${name}: ${out} out`),
    );
    const [first = ''] = lines.slice(0, 5);
    expect(first).toContain(`${worstFirst[0]?.name}: 12 out: main journal diameter`);
    expect(lines.slice(0, 5).join('\n')).toContain(`${worstFirst[1]?.name}: 11 out`);
  });
});
