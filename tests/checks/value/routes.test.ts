import { describe, expect, it } from 'vitest';
import type { Row } from '../../../src/checks/judge/row.ts';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { codesOf, type Files, findingsOf, REGISTER, rowsOf, shopFiles } from '../../shopOf.ts';

const LIMITS = 'main_bearing_clearance: { new: { max: 0.0050 } }';
const files = (blocks: string, more: Files = {}): Files =>
  shopFiles(LIMITS, blocks, 'rebuild', { 'instruments.yaml': REGISTER, ...more });

function rowOf(blocks: string, id = 'main_bearing_clearance', more: Files = {}): Row {
  const row = rowsOf(files(blocks, more)).find(
    ({ characteristic, position }) => characteristic.id === id && position.name === '1',
  );
  if (row === undefined) throw new Error(`no row of ${id}`);
  return row;
}

const inThou = (amount: { n: bigint; d: bigint }): number => Math.round(toNumber(amount) / 254) / 1000;
const namesOf = (row: Row): readonly string[] =>
  row.routes.map(({ route }) => `${route.name} by ${route.with.join(' and ')}`);
const TENTH = 25_400;

const BORE = '- { measure: main_bearing_bore, with: bore, set_with: mic, at: { 1: 3.0030 } }';
const JOURNAL = '- { measure: main_journal_diameter, with: mic, at: { 1: 3.0000 } }';
const STRIP = '- { measure: main_bearing_clearance, with: strip, at: { 1: 0.0030 } }';

describe('of several ways to one value', () => {
  it('the one with the smallest uncertainty is judged, the others stand beside it', () => {
    const row = rowOf(`${STRIP}\n${BORE}\n${JOURNAL}`);
    expect(namesOf(row)).toEqual(['bearing bore − journal by bore and mic', 'read directly by strip']);
    expect(row.routes.map(({ en }) => en)).toEqual([null, 0]);
  });

  it('each has a verdict of its own, and only the judged one makes the row', () => {
    const row = rowOf(`${STRIP.replace('0.0030', '0.0055')}\n${BORE}\n${JOURNAL}`);
    expect(row.judgement.verdict).toBe('ok');
    expect(row.routes.map(({ verdict }) => verdict)).toEqual(['ok', 'out']);
    expect(codesOf(files(`${STRIP.replace('0.0030', '0.0055')}\n${BORE}\n${JOURNAL}`))).not.toContain(
      'reading/out',
    );
  });

  it('a finer direct reading is judged before a coarser sum', () => {
    const fine = STRIP.replace('strip', 'fine');
    expect(namesOf(rowOf(`${fine}\n${BORE}\n${JOURNAL}`))[0]).toBe('read directly by fine');
  });

  it('of two equally sure a direct reading comes first', () => {
    const exact = 'kind: instruments\ninstruments: { plain: { type: other, resolution: 0 in } }\n';
    const three = [BORE, JOURNAL, STRIP].map((block) =>
      block.replace(/with: \w+/, 'with: plain').replace(', set_with: mic', ''),
    );
    for (const blocks of [three, three.toReversed()]) {
      const row = rowOf(blocks.join('\n'), undefined, { 'instruments.yaml': exact });
      expect(namesOf(row)).toEqual(['read directly by plain', 'bearing bore − journal by plain']);
    }
  });

  it('of two equally sure readings the one nearer its limit counts, in whatever order they stand', () => {
    const twice = (first: string, second: string) =>
      rowOf(`${STRIP.replace('0.0030', first)}\n${STRIP.replace('0.0030', second)}`).routes.map(({ mean }) =>
        inThou(mean),
      );
    expect(twice('0.0032', '0.0034')).toEqual([3.4, 3.2]);
    expect(twice('0.0034', '0.0032')).toEqual([3.4, 3.2]);
  });

  it('a sum takes the judged reading of each part', () => {
    const coarse = '- { measure: main_journal_diameter, with: dial, at: { 1: 2.9990 } }';
    for (const blocks of [`${coarse}\n${BORE}\n${JOURNAL}`, `${JOURNAL}\n${BORE}\n${coarse}`]) {
      expect(rowOf(blocks).routes.map(({ mean }) => inThou(mean))).toEqual([3]);
    }
  });

  it('both sums of a main bearing stand there where all parts were measured', () => {
    const parts = `${BORE}\n${JOURNAL}\n- { measure: main_housing_bore, with: bore, at: { 1: 3.2530 } }\n- { measure: main_shell_thickness, with: mic, at: { 1: { upper: 0.1249, lower: 0.1251 } } }`;
    expect(rowOf(parts).routes.map(({ route }) => route.name)).toEqual([
      'bearing bore − journal',
      'housing − shells − journal',
    ]);
  });
});

describe('two ways that disagree', () => {
  const disagrees = (blocks: string) => codesOf(files(blocks)).filter((code) => code === 'method/disagree');
  const twice = (first: string, second: string) =>
    `- { measure: main_journal_diameter, with: mic, at: { 1: ${first} } }\n- { measure: main_journal_diameter, with: ${second} } }`;

  it('are a warning at the place of the one that is not judged', () => {
    const found = findingsOf(files(twice('3.0000', 'mic, at: { 1: 3.0009'))).filter(
      ({ code }) => code === 'method/disagree',
    );
    expect(
      found.map(({ severity, place, measure, position }) => [severity, place.line, measure, position]),
    ).toEqual([['warning', 6, 'main_journal_diameter', '1']]);
    expect(found[0]?.message).toContain('E_n');
  });

  it('by less than their uncertainty do not', () => {
    expect(disagrees(twice('3.0000', 'bore, at: { 1: 3.0001'))).toEqual([]);
  });

  /** One micrometer twice: its own error cancels, and √2 × 0.0001/√12 × 1.96 = 0.00008 in is left. */
  it('of one instrument are held to less, since its error is in both and cancels', () => {
    expect(disagrees(twice('3.0000', 'mic, at: { 1: 3.0001'))).toHaveLength(1);
    expect(disagrees(twice('3.0000', 'bore, at: { 1: 3.0001'))).toHaveLength(0);
  });

  it('and cannot be told from the |E_n| of 1: on it they agree', () => {
    const row = rowOf(twice('3.0000', 'bore, at: { 1: 3.0001'), 'main_journal_diameter');
    const [, other] = row.routes;
    const u = Math.sqrt(2 * (TENTH ** 2 / 3 + TENTH ** 2 / 12));
    expect(other?.en).toBeCloseTo(TENTH / (1.959964 * u), 5);
  });

  it('raise nothing but the disagreement: the other way is not judged', () => {
    const codes = codesOf(
      shopFiles(
        'main_journal_diameter: { wear: { min: 2.9995 } }',
        twice('3.0000', 'dial, at: { 1: 2.9950'),
        'teardown',
        { 'instruments.yaml': REGISTER },
      ),
    );
    expect(codes).toContain('method/disagree');
    expect(codes).not.toContain('reading/out');
  });
});

describe('the uncertainty of a value', () => {
  const uOf = (blocks: string, id?: string) => rowOf(blocks, id).routes[0]?.route.u ?? Number.NaN;
  const square = (value: number) => value ** 2;

  it('of one reading is its largest error and its resolution', () => {
    expect(uOf(JOURNAL, 'main_journal_diameter')).toBeCloseTo(
      Math.sqrt(square(TENTH) / 3 + square(TENTH) / 12),
      3,
    );
  });

  it('of a clearance: the error of the micrometer that set the bore gauge and read the journal cancels', () => {
    const own = square(TENTH) / 3 + 2 * (square(TENTH) / 12);
    const zeroing = square(TENTH) / 12;
    expect(uOf(`${BORE}\n${JOURNAL}`)).toBeCloseTo(Math.sqrt(own + zeroing), 3);
    const unset = BORE.replace(', set_with: mic', '');
    expect(uOf(`${unset}\n${JOURNAL}`)).toBeCloseTo(Math.sqrt(own + square(TENTH) / 3), 3);
  });

  it('of an out of round: the instrument’s own error cancels, two resolutions are left', () => {
    const limits = 'main_journal_out_of_round: { wear: { max: 0.001 } }';
    const grid =
      '- { measure: main_journal_diameter, with: mic, directions: [a, b], at: { 1: [3.0003, 3.0000] } }';
    const rows = rowsOf(shopFiles(limits, grid, 'teardown', { 'instruments.yaml': REGISTER }));
    const round = rows.find(({ characteristic }) => characteristic.id === 'main_journal_out_of_round');
    expect(round?.routes[0]?.route.u).toBeCloseTo(Math.sqrt((2 * square(TENTH)) / 12), 3);
  });

  it('of repeats: the spread of their mean, with one degree of freedom less than their number', () => {
    const exact = {
      'instruments.yaml': 'kind: instruments\ninstruments: { mic: { type: micrometer, resolution: 0 in } }\n',
    };
    const repeat =
      '- { measure: main_journal_diameter, with: mic, at: { 1: { repeat: [3.0000, 3.0002, 3.0004] } } }';
    const [judged] = rowOf(repeat, 'main_journal_diameter', exact).routes;
    expect(judged?.route.u).toBeCloseTo((2 * TENTH) / Math.sqrt(3), 3);
    expect(judged?.route.dof).toBe(2);
    // t(0.975; 2) = 4.3027 (JCGM 100:2008, table G.2: 4.30)
    expect((judged?.route.expanded ?? 0) / (judged?.route.u ?? 1)).toBeCloseTo(4.3027, 3);
  });

  it('of a range read: half of it, rectangular, in place of the strip’s marks', () => {
    const range = '- { measure: main_bearing_clearance, with: strip, at: { 1: 0.003 to 0.004 } }';
    expect(uOf(range)).toBeCloseTo((5 * TENTH) / Math.sqrt(3), 3);
    expect(inThou(rowOf(range).routes[0]?.mean ?? { n: 0n, d: 1n })).toBe(3.5);
  });

  it('of a strip between its marks: half the gap', () => {
    const between = STRIP.replace('0.0030', '0.0050');
    expect(uOf(between)).toBeCloseTo((10 * TENTH) / Math.sqrt(3), 3);
  });

  it('through the shells holds their crush, as a term of the model', () => {
    const parts = `${JOURNAL}\n- { measure: main_housing_bore, with: bore, at: { 1: 3.2530 } }\n- { measure: main_shell_thickness, with: mic, at: { 1: 0.1250 } }`;
    const terms = rowOf(parts).routes[0]?.route.measured.mean.terms;
    expect([...(terms?.keys() ?? [])]).toContain('crush of the shells (model)');
    // One wall doubled and the journal, by one micrometer: −2 and −1 times its error.
    expect(Math.abs(terms?.get('largest error of mic')?.u ?? 0)).toBeCloseTo((3 * TENTH) / Math.sqrt(3), 3);
  });

  it('of an instrument that nobody registered is assumed, and said', () => {
    const codes = codesOf(files('- { measure: main_journal_diameter, with: mick, at: { 1: 3.0 } }'));
    expect(codes).toContain('instrument/unknown');
    expect(codes).toContain('instrument/assumed');
    expect(codesOf(files(JOURNAL))).not.toContain('instrument/assumed');
  });
});

describe('rods and their crankpins', () => {
  const engine = (layout: string): Files => ({
    'e/engine.yaml': `kind: engine\nname: A\nunits: { length: in }\nlayout: ${layout}\n`,
  });
  const blocks =
    '- { measure: rod_bearing_bore, at: { 5: 2.5030 } }\n- { measure: crankpin_diameter, at: { 1: 2.5000, 5: 2.4990 } }';
  const clearances = (layout: string, text = blocks) =>
    rowsOf(shopFiles('rod_bearing_clearance: { new: { max: 1 } }', text, 'rebuild', engine(layout)))
      .filter(
        ({ characteristic, routes }) => characteristic.id === 'rod_bearing_clearance' && routes.length > 0,
      )
      .map(({ position, routes }) => [position.name, routes.map(({ mean }) => inThou(mean))]);

  it('in line, each rod runs on the pin of its number', () => {
    expect(clearances('{ cylinders: 6, crankpins: 6 }')).toEqual([['5', [4]]]);
  });

  it('in a vee, on the pin that the layout says', () => {
    expect(
      clearances('{ cylinders: 8, crankpins: 5, pins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4, 8] } }'),
    ).toEqual([['5', [3]]]);
  });

  it('with nothing said of the pins of a vee the layout is refused', () => {
    expect(() => clearances('{ cylinders: 8, crankpins: 5 }')).toThrow(
      'which rods run on each is not stated',
    );
  });

  it('pins written with their rods serve as well', () => {
    const named = blocks.replace('5: 2.5030', '1L: 2.5030').replace(', 5: 2.4990', '');
    expect(clearances('{ crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }', named)).toEqual([['1L', [3]]]);
  });
});
