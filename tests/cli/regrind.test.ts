import { beforeEach, describe, expect, it } from 'vitest';
import { benchFolder } from './calling.ts';

const bench = benchFolder();

const session = (stage: string, date: string, blocks: string, more = ''): string =>
  `kind: session\nstage: ${stage}\ndate: ${date}\n${more}readings:\n${blocks}`;
const journals = (third: string): string =>
  `  - { measure: main_journal_diameter, with: mic, at: { 1: 2.4980, 2: 2.4980, 3: ${third} } }\n`;
const bores = (third: string): string =>
  `  - { measure: main_bearing_bore, with: bore, at: { 1: 2.5012, 2: 2.5012, 3: ${third} } }\n`;

/** Worn journals, ground by 0.010 and measured there; the bores with their new shells at the rebuild. */
const REGROUND = {
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'instruments.yaml': `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
`,
  'engine.yaml': 'kind: engine\nname: Sluice pump\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
  'limits.yaml': `kind: limits
source: Invented.
limits:
  main_bearing_clearance: { new: 0.0020 to 0.0038, wear: { max: 0.0050 } }
  crankshaft_end_play: { new: 0.004 to 0.012 }
`,
  'a.yaml': session(
    'teardown',
    '2026-03-02',
    `${journals('2.4950')}${bores('2.5020')}  - { measure: crankshaft_end_play, value: 0.008 }\n`,
  ),
  'b.yaml': session(
    'machined',
    '2026-03-09',
    journals('2.4882').replace('1: 2.4980, 2: 2.4980', '1: 2.4881, 2: 2.4881'),
    'machined: [{ part: main journals, size: 0.010 under }]\n',
  ),
  'c.yaml': session(
    'rebuild',
    '2026-03-16',
    bores('2.4911').replace('1: 2.5012, 2: 2.5012', '1: 2.4912, 2: 2.4912'),
    'fitted: { main_shells: { size: 0.010 under, condition: new } }\n',
  ),
};

beforeEach(() => bench.put(REGROUND));

const explained = async (...words: readonly string[]): Promise<readonly string[]> => {
  const { out } = await bench.call('explain', '.', 'main_bearing_clearance', ...words);
  return out.split('\n');
};

describe('a clearance of a ground journal and a bore that was measured at the rebuild', () => {
  it('is explained as the check shows it, each input by its session', async () => {
    const { out } = await bench.call('check', '--format', 'json');
    const rows: readonly { readonly measure: string; readonly position: string; readonly verdict: string }[] =
      JSON.parse(out).engines[0].state.rows;
    const shown = rows.find(
      ({ measure, position }) => measure === 'main_bearing_clearance' && position === '3',
    );
    expect(shown).toMatchObject({ verdict: 'ok', mean: 0.0029 });

    const lines = await explained('3');
    expect(lines.slice(0, 2)).toEqual([
      'main bearing clearance 3  machined 2026-03-09 and rebuild 2026-03-16',
      '  0.0029 in  ok',
    ]);
    expect(lines).toContain('  main_bearing_bore      2.4911  bore  rebuild 2026-03-16   c.yaml:6:78');
    expect(lines).toContain('  main_journal_diameter  2.4882  mic   machined 2026-03-09  b.yaml:6:81');
    expect(lines.find((each) => each.includes('decided by'))).toMatch(
      /^ {2}rebuild with new main shells is decided by new/,
    );
  });

  it('of a session is explained as that session found it', async () => {
    expect((await explained('3', '--session', 'teardown')).slice(0, 2)).toEqual([
      'main bearing clearance 3  teardown 2026-03-02',
      '  0.0070 in  out, loose by 2 thou',
    ]);
  });

  it('is listed with both sessions', async () => {
    expect((await explained())[1]).toBe('  1  0.0031  ok  machined 2026-03-09 and rebuild 2026-03-16');
  });
});

it('what holds no longer is said to be over', async () => {
  const { out } = await bench.call('explain', '.', 'crankshaft_end_play');
  expect(out.split('\n')[0]).toBe('crankshaft end play  teardown 2026-03-02, holds no longer');
});

it('a comparison of two sessions is one of how they left the engine', async () => {
  const { out } = await bench.call('diff', 'teardown', 'rebuild', '.', '--format', 'json');
  const rows: readonly { measure: string; position: string; state: string; crossed: string | null }[] =
    JSON.parse(out).engines[0].rows;
  const of = (measure: string) => rows.filter((each) => each.measure === measure);
  expect(of('main_journal_diameter').map(({ state }) => state)).toEqual(['real', 'real', 'real']);
  expect(of('main_bearing_clearance').map(({ crossed }) => crossed)).toEqual([null, null, 'in']);
  expect(of('crankshaft_end_play').map(({ state }) => state)).toEqual(['disappeared']);
});
