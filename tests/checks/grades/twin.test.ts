import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../propertyRuns.ts';
import { type Files, reportOf } from '../../shopOf.ts';
import {
  filesOf,
  lengthIn,
  type RandomBlock,
  type RandomShop,
  randomShop,
  type Tenths,
} from '../randomShop.ts';

/** How a size moves when all main journals are ground by `u`, and shells are fitted for it. */
const MOVES: Readonly<Record<string, (u: Tenths) => Tenths>> = {
  main_journal_diameter: (u) => -u,
  main_bearing_bore: (u) => -u,
  main_shell_thickness: (u) => u / 2,
};

const movedBlock = (block: RandomBlock, u: Tenths): RandomBlock => ({
  ...block,
  at: Object.fromEntries(
    Object.entries(block.at).map(([position, figures]) => [
      position,
      figures.map((each) => each + (MOVES[block.measure]?.(u) ?? 0)),
    ]),
  ),
});

/** The same engine with its crankshaft ground; its limits are those of the standard one, with or without a row for the size. */
function twinOf(shop: RandomShop, u: Tenths, hasRows: boolean): Files {
  const files = filesOf({ ...shop, blocks: shop.blocks.map((block) => movedBlock(block, u)) }, 'in');
  const size = `${lengthIn('in', u)} under`;
  return stating(hasRows ? { ...files, 'e/limits.yaml': withRows(shop, u) } : files, size);
}

/** Nothing of the standard sizes but a band that is wide of them: what judges is the row. */
function withRows(shop: RandomShop, u: Tenths): string {
  const lines = Object.entries(shop.limits).map(([id, [min, max]]) => {
    const by = MOVES[id]?.(u);
    const band = (move: Tenths): string => `${lengthIn('in', min + move)} to ${lengthIn('in', max + move)}`;
    return by === undefined
      ? `  ${id}: { new: ${band(0)} }`
      : `  ${id}: { new: ${band(7)}, sizes: { ${lengthIn('in', u)} under: { new: ${band(by)} } } }`;
  });
  return `kind: limits\nsource: Invented.\nlimits:\n${lines.join('\n')}\n`;
}

const stating = (files: Files, size: string): Files => ({
  ...files,
  'e/session.yaml': (files['e/session.yaml'] ?? '').replace(
    'readings:',
    `fitted: { crankshaft: { main: ${size} }, main_shells: { size: ${size} } }\nreadings:`,
  ),
});

/** Every row's verdict and distance, and every finding without its numbers. */
const said = (files: Files): readonly string[] => {
  const [session] = reportOf(files).sessions;
  return [
    ...(session?.rows ?? []).map(
      ({ characteristic, position, judgement: { verdict, past, probability } }) =>
        `${characteristic.id} ${position.key} ${verdict} ${past?.by.n} ${probability?.toFixed(9)}`,
    ),
    ...(session?.findings ?? [])
      .map(({ code, measure, position }) => `${code} ${measure} ${position}`)
      .sort(),
  ];
};

const STEPS: readonly Tenths[] = [20, 30, 100, 200, 300, 250];

describe('a shop and the same with its crankshaft ground', () => {
  it.each([
    ['by limits that are moved', false],
    ['by limits that are stated for the size', true],
  ])(
    'get the same verdicts, distances and findings %s',
    (_, hasRows) => {
      const seen = new Set<string>();
      fc.assert(
        fc.property(randomShop, fc.constantFrom(...STEPS), (shop, u) => {
          const standard = said(stating(filesOf(shop, 'in'), 'std'));
          for (const each of standard) seen.add(each.split(' ')[2] ?? '');
          expect(said(twinOf(shop, u, hasRows))).toEqual(standard);
        }),
        runs(120, 60),
      );
      for (const verdict of ['ok', 'out', 'undecided']) expect(seen).toContain(verdict);
    },
    60_000,
  );

  it('and whose size nobody states is out by all of it', () => {
    fc.assert(
      fc.property(randomShop, fc.constantFrom(...STEPS), (shop, u) => {
        const twin = twinOf({ ...shop, stage: 'rebuild' }, u, false);
        const silent = {
          ...twin,
          'e/session.yaml': (twin['e/session.yaml'] ?? '').replace(/^fitted:.*$/m, ''),
        };
        const rows = reportOf(silent).sessions[0]?.rows ?? [];
        for (const row of rows.filter(({ characteristic: { id } }) => id === 'main_journal_diameter')) {
          expect(row.judgement.verdict).toBe('out');
        }
      }),
      runs(30),
    );
  }, 60_000);
});
