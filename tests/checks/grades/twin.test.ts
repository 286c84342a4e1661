import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oncePerTexts } from '../../oncePerTexts.ts';
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

const saidOfStandard = oncePerTexts(said);

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
          const standard = saidOfStandard(stating(filesOf(shop, 'in'), 'std'));
          for (const each of standard) seen.add(each.split(' ')[2] ?? '');
          expect(said(twinOf(shop, u, hasRows))).toEqual(standard);
        }),
        runs(120, 12),
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
      runs(30, 10),
    );
  }, 60_000);
});

/** Readings of two crankpins with two rods each: pins, walls by halves, bores, in tenths of a thousandth. */
const vee = fc.record({
  stage: fc.constantFrom('teardown', 'trial', 'rebuild'),
  pins: readings(24_995, 2),
  walls: readings(1_247, 8),
  bores: readings(25_020, 4),
});

function readings(middle: Tenths, count: number): fc.Arbitrary<readonly Tenths[]> {
  return fc.array(fc.integer({ min: middle - 12, max: middle + 12 }), { minLength: count, maxLength: count });
}

const RODS = ['1L', '1R', '2L', '2R'];

/** The same engine with its pins ground by `u`; or one pin alone, with the shells of its two rods. */
function veeFiles(
  { stage, pins, walls, bores }: typeof vee extends fc.Arbitrary<infer T> ? T : never,
  by: readonly Tenths[],
): Files {
  const u = (rod: number): Tenths => by[Math.floor(rod / 2)] ?? 0;
  const at = (names: readonly string[], text: (index: number) => string): string =>
    names.map((name, index) => `${name}: ${text(index)}`).join(', ');
  const size = (tenths: Tenths): string => (tenths === 0 ? 'std' : `${lengthIn('in', tenths)} under`);
  const wall = (rod: number, half: number): string =>
    lengthIn('in', (walls[2 * rod + half] ?? 0) + u(rod) / 2);
  return {
    'e/engine.yaml':
      'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3, cylinders: [1L, 1R, 2L, 2R], crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }\n',
    'e/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits:\n  crankpin_diameter: { new: 2.4990 to 2.5000, wear: { min: 2.4985 } }\n  rod_shell_thickness: { new: 0.1245 to 0.1250, wear: { min: 0.1238 } }\n  rod_bearing_bore: { new: 2.5015 to 2.5025 }\n  rod_bearing_clearance: { new: 0.0018 to 0.0035, wear: { max: 0.0040 } }\n',
    'e/session.yaml': `kind: session
stage: ${stage}
date: 2026-02-03
machined: [${by.map((tenths, pin) => `{ part: crankpins, at: ${pin + 1}, size: ${size(tenths)} }`).join(', ')}]
readings:
  - { measure: crankpin_diameter, at: { ${at(['1', '2'], (pin) => lengthIn('in', (pins[pin] ?? 0) - (by[pin] ?? 0)))} } }
  - { measure: rod_shell_thickness, at: { ${at(RODS, (rod) => `[${wall(rod, 0)}, ${wall(rod, 1)}]`)} } }
  - { measure: rod_bearing_bore, at: { ${at(RODS, (rod) => lengthIn('in', (bores[rod] ?? 0) - u(rod)))} } }
`,
  };
}

describe('a vee of two rods a pin', () => {
  it.each([
    ['with all pins ground', [100, 100]],
    ['with one pin ground, and shells for its two rods', [0, 200]],
    ['with each pin ground to its own size', [100, 300]],
  ])(
    '%s gets the verdicts and findings of its standard twin',
    (_, by) => {
      const seen = new Set<string>();
      // Which reading stands apart from its like depends on which are alike: those of one size.
      const verdictsIn = (all: readonly string[]): readonly string[] =>
        all.filter((each) => !each.startsWith('reading/spread'));
      fc.assert(
        fc.property(vee, (shop) => {
          const standard = verdictsIn(saidOfStandard(veeFiles(shop, [0, 0])));
          for (const each of standard) seen.add(each.split(' ')[2] ?? '');
          expect(verdictsIn(said(veeFiles(shop, by)))).toEqual(standard);
        }),
        runs(60, 15),
      );
      for (const verdict of ['ok', 'out', 'worn']) expect(seen).toContain(verdict);
    },
    60_000,
  );
});
