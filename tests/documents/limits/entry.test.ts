import { describe, expect, it } from 'vitest';
import { gradeText } from '../../../src/documents/grades/grade.ts';
import type { Bands, LimitValue } from '../../../src/documents/limits/bands.ts';
import { type MadeSize, ruleOf, STANDARD_SIZE } from '../../../src/documents/limits/gradedBands.ts';
import type { LimitEntry } from '../../../src/documents/limits/limitEntry.ts';
import type { LimitsDocument } from '../../../src/documents/limits/limits.ts';
import { entriesIn } from '../../../src/documents/limits/placedEntries.ts';
import { gradesPrinted, limitsInForce } from '../../../src/documents/limits/precedence.ts';
import { fraction, toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { ENGINE, type Files, limitsOf, refusalsOf, shopOf } from '../../shopOf.ts';

const files = (lines: string, more: Files = {}): Files => ({
  'e/engine.yaml': `${ENGINE}materials: { crankshaft: steel }\n`,
  'e/l.yaml': limitsOf(lines),
  ...more,
});

function entryOf(id: string, says: string): LimitEntry {
  const all = files(`${id}: ${says}`);
  const found = shopOf(all).engine?.limits[0]?.limits.get(id);
  if (found === undefined) throw new Error(`not read: ${refusalsOf(all).join(', ')}`);
  return found.general;
}

const inches = (amount: ReturnType<typeof fraction> | undefined): string | undefined =>
  amount && toDecimal(fromBase(amount, unitNamed('in')), 4);

/** `2.9980 to 2.9990`, as an amount and beside it as it is written; a formula as it is written and by how much it is moved. */
const sideText = (side: LimitValue | undefined): string => {
  if (side === undefined) return '';
  if (side.kind === 'amount') return `${inches(side.amount)} (${side.written})`;
  return side.movedBy === undefined ? side.written : `${side.written} moved by ${inches(side.movedBy)}`;
};
const bandsText = (bands: Bands): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(bands).map(([name, band]) => [name, `${sideText(band.min)} to ${sideText(band.max)}`]),
  );

const NOTHING = {
  bands: {},
  sizes: [],
  per: undefined,
  by: undefined,
  temperature: undefined,
  usual: undefined,
  source: undefined,
  note: undefined,
};

describe('an entry of limits is read with all that it says', () => {
  it('and what it leaves out is left out', () => {
    expect(entryOf('main_journal_diameter', '{ target: { max: 3 } }')).toEqual({
      ...NOTHING,
      bands: { target: { max: expect.anything() } },
    });
  });

  it.each<[string, string, Readonly<Record<string, string>>]>([
    [
      'three bands',
      '{ target: { max: 3 }, new: 2 to 3, wear: { min: 1.5 } }',
      { target: ' to 3.0000 (3)', new: '2.0000 (2) to 3.0000 (3)', wear: '1.5000 (1.5) to ' },
    ],
    ['the last size of a shaft', '{ last_size: 2.9 }', { last: '2.9000 (2.9) to ' }],
    ['the least thickness', '{ least_thickness: 0.09 }', { last: '0.0900 (0.09) to ' }],
    ['the largest bore', '{ largest_bore: 76.2 mm }', { last: ' to 3.0000 (76.2 mm)' }],
    [
      'a last band of two sides',
      '{ last_size: 2.9, largest_bore: 3 }',
      { last: '2.9000 (2.9) to 3.0000 (3)' },
    ],
    ['no band', '{ note: see the sheet }', {}],
  ])('%s', (_, says, expected) => {
    expect(bandsText(entryOf('main_journal_diameter', says).bands)).toEqual(expected);
  });

  it('an angle that comes round again goes on past nought', () => {
    const degrees = (says: string): readonly (number | undefined)[] => {
      const { min, max } = entryOf('intake_opening', `{ new: ${says} }`).bands.new ?? {};
      return [min, max].map((side) =>
        side?.kind === 'amount' ? Number(side.amount.n) / Number(side.amount.d) : undefined,
      );
    };
    expect(degrees('{ min: 710 deg, max: 10 deg }')).toEqual([710, 730]);
    expect(degrees('10 to 20 deg')).toEqual([10, 20]);
    expect(degrees('{ max: 10 deg }')).toEqual([undefined, 10]);
  });

  it.each([
    ['ends', { by: 'ends', per: undefined }],
    ['range', { by: 'range', per: undefined }],
  ])('a taper by its %s', (by, expected) => {
    expect(entryOf('cylinder_taper', `{ by: ${by}, wear: { max: 0.001 } }`)).toMatchObject(expected);
  });

  it('what such parts measure as a rule, in tenths of a nanometre', () => {
    expect(entryOf('main_journal_diameter', '{ usual: { mean: 3.0000, deviation: 0.0001 } }')).toEqual({
      ...NOTHING,
      usual: { mean: 762_000_000, deviation: 25_400 },
    });
  });

  it('temperature, source and note', () => {
    expect(
      entryOf(
        'main_journal_diameter',
        '{ temperature: 70 degF, source: page 4, note: dry, new: { max: 3 } }',
      ),
    ).toMatchObject({ temperature: { text: '70 degF' }, source: 'page 4', note: 'dry' });
  });

  it('and the sizes that its maker prints, each with its source', () => {
    const { sizes } = entryOf(
      'main_journal_diameter',
      '{ sizes: { std: { new: 3 to 3.1 }, 0.010 under: { new: 2.99 to 3, source: page 5 } } }',
    );
    expect(sizes.map(({ grade, bands, source }) => [gradeText(grade), bandsText(bands), source])).toEqual([
      ['std', { new: '3.0000 (3) to 3.1000 (3.1)' }, undefined],
      ['0.010 under', { new: '2.9900 (2.99) to 3.0000 (3)' }, 'page 5'],
    ]);
  });
});

const TEN_UNDER: MadeSize = {
  grade: { by: fraction(-2_540_000), size: undefined, of: undefined },
  by: fraction(-2_540_000),
};

/** What holds for a characteristic at a position, or in general. */
function inForce(
  all: Files,
  position?: string,
  size: MadeSize = STANDARD_SIZE,
  id = 'main_journal_diameter',
) {
  const { engine, registry } = shopOf(all);
  const measure = registry.find(id);
  if (engine === undefined || measure === undefined) throw new Error(refusalsOf(all).join(', '));
  const { layout } = engine.document;
  const at = layout.positionsOf(measure.family).find(({ name }) => name === position);
  const found = limitsInForce(engine.limits, layout, measure, at, size);
  const temperatures = Object.entries(found.temperatures).map(([name, { text }]) => [name, text] as const);
  return { ...found, bands: bandsText(found.bands), temperatures: Object.fromEntries(temperatures) };
}

const NO_LIMITS = {
  bands: {},
  rules: {},
  sources: {},
  temperatures: {},
  isGeneral: true,
  per: undefined,
  by: undefined,
  usual: undefined,
  note: undefined,
};

describe('the limits in force', () => {
  const SHEET = files(
    'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9960 }, source: page 4, note: dry, temperature: 70 degF, at: { 2: { new: { max: 2.9985 }, note: rear }, 3: { target: { max: 2.9984 }, source: page 9 } } }',
  );
  const GENERAL = {
    ...NO_LIMITS,
    bands: { new: '2.9980 (2.9980) to 2.9990 (2.9990)', wear: '2.9960 (2.9960) to ' },
    rules: { new: 'stated', wear: 'stated' },
    sources: { new: 'page 4', wear: 'page 4' },
    temperatures: { new: '70 degF', wear: '70 degF' },
    note: 'dry',
  };

  it('of what no document speaks of are none', () => {
    expect(inForce(SHEET, '1', STANDARD_SIZE, 'main_journal_taper')).toEqual(NO_LIMITS);
  });

  it('in general, and at a position of which nothing is said, are those of the entry', () => {
    expect(inForce(SHEET)).toEqual(GENERAL);
    expect(inForce(SHEET, '1')).toEqual(GENERAL);
  });

  it('at a position are what stands there, and the rest of the entry around it', () => {
    expect(inForce(SHEET, '2')).toEqual({
      ...GENERAL,
      isGeneral: false,
      bands: { ...GENERAL.bands, new: ' to 2.9985 (2.9985)' },
      note: 'rear',
    });
    expect(inForce(SHEET, '3')).toEqual({
      ...GENERAL,
      isGeneral: false,
      bands: { target: ' to 2.9984 (2.9984)', ...GENERAL.bands },
      rules: { target: 'stated', ...GENERAL.rules },
      sources: { target: 'page 9', ...GENERAL.sources },
      temperatures: { target: '70 degF', ...GENERAL.temperatures },
    });
  });

  it('without a source of their own are from that of their document', () => {
    expect(inForce(files('main_journal_diameter: { new: { max: 3 } }')).sources).toEqual({
      new: 'Invented.',
    });
  });

  it('of two axes are those of the key that says more of where, in whatever order they stand', () => {
    const rings = { 'e/engine.yaml': ENGINE.replace('crankpins: 4', 'crankpins: 4, rings: [top, second]') };
    const told = (at: string, position: string) =>
      inForce(
        files(`ring_end_gap: { new: { max: 9 }, at: ${at} }`, rings),
        position,
        STANDARD_SIZE,
        'ring_end_gap',
      ).bands;
    const at = '{ top: { new: { max: 1 } }, 3: { target: { max: 2 }, top: { new: { max: 3 } } } }';
    expect(told(at, '3 top')).toEqual({ target: ' to 2.0000 (2)', new: ' to 3.0000 (3)' });
    expect(told(at, '3 second')).toEqual({ target: ' to 2.0000 (2)', new: ' to 9.0000 (9)' });
    expect(told(at, '1 top')).toEqual({ new: ' to 1.0000 (1)' });
    expect(told(at, '1 second')).toEqual({ new: ' to 9.0000 (9)' });
  });

  it('keep how a taper is taken and what is usual, each from the nearest that says it', () => {
    const above = {
      'l.yaml': `units: { length: in }\n${limitsOf('cylinder_taper: { by: ends, per: 2 in, wear: { max: 0.002 } }')}`,
    };
    const nearer = files(
      'cylinder_taper: { by: range, usual: { mean: 0.0010, deviation: 0.0002 }, new: { max: 0.001 } }',
      above,
    );
    expect(inForce(nearer, '1', STANDARD_SIZE, 'cylinder_taper')).toEqual({
      ...NO_LIMITS,
      bands: { new: ' to 0.0010 (0.001)', wear: ' to 0.0020 (0.002)' },
      rules: { new: 'stated', wear: 'stated' },
      sources: { new: 'Invented.', wear: 'Invented.' },
      by: 'range',
      per: fraction(508_000_000),
      usual: { mean: 254_000, deviation: 50_800 },
    });
  });

  it('are one object wherever nothing of their own is said, so that what is worked out of them is kept', () => {
    const { engine, registry } = shopOf(SHEET);
    const measure = registry.find('main_journal_diameter');
    if (engine === undefined || measure === undefined) throw new Error();
    const { layout } = engine.document;
    const [one, two] = layout.positionsOf(measure.family);
    const at = (position: typeof one, size = STANDARD_SIZE) =>
      limitsInForce(engine.limits, layout, measure, position, size);
    expect(at(one)).toBe(at(undefined));
    expect(at(one)).not.toBe(at(two));
    expect(at(one, TEN_UNDER)).toBe(at(undefined, TEN_UNDER));
    expect(at(one, TEN_UNDER)).not.toBe(at(one));
    expect(at(one, TEN_UNDER)).not.toBe(at(one, { ...TEN_UNDER, by: fraction(-254_000) }));
    const limits = engine.limits[0]?.limits.get(measure.id);
    if (limits === undefined) throw new Error('no limits');
    expect(entriesIn(limits, layout, measure.family)).toBe(entriesIn(limits, layout, measure.family));
  });
});

describe('the limits of a part that was made 0.010 under', () => {
  const under = (says: string, size = TEN_UNDER) => {
    const found = inForce(files(`main_journal_diameter: ${says}`), '1', size);
    return [found.bands, found.rules, found.sources];
  };

  it.each<
    [
      string,
      string,
      Readonly<Record<string, string>>,
      Readonly<Record<string, string>>,
      Readonly<Record<string, string>>?,
    ]
  >([
    [
      'are moved from those of a standard part',
      '{ new: 2.9980 to 2.9990 }',
      { new: '2.9880 (2.9880) to 2.9890 (2.9890)' },
      { new: 'moved' },
    ],
    [
      'are moved on the side that is stated alone',
      '{ wear: { min: 2.9980 } }',
      { wear: '2.9880 (2.9880) to ' },
      { wear: 'moved' },
    ],
    ['on the other as well', '{ wear: { max: 2.9980 } }', { wear: ' to 2.9880 (2.9880)' }, { wear: 'moved' }],
    [
      'are moved from the standard row of the table',
      '{ sizes: { std: { new: { max: 3 } } } }',
      { new: ' to 2.9900 (2.99)' },
      { new: 'moved' },
    ],
    [
      'are those of its row, where it has one, with the source of that',
      '{ new: { max: 3 }, wear: { min: 2.9 }, sizes: { 0.010 under: { new: { max: 2.9905 }, source: page 5 } } }',
      { new: ' to 2.9905 (2.9905)', wear: '2.8900 (2.89) to ' },
      { new: 'stated', wear: 'moved' },
      { new: 'page 5', wear: 'Invented.' },
    ],
    [
      'end where those of any part end',
      '{ last_size: 2.9 }',
      { last: '2.9000 (2.9) to ' },
      { last: 'stated' },
    ],
    [
      'are moved where a formula names nothing, and not where it sees the part that is fitted',
      '{ new: { min: { formula: "1 + 2" }, max: { formula: "main_bearing_bore - 0.002" } } }',
      { new: '1 + 2 moved by -0.0100 to main_bearing_bore - 0.002' },
      { new: 'moved' },
    ],
  ])('%s', (_, says, bands, rules, sources) => {
    const stated = Object.fromEntries(Object.keys(bands).map((name) => [name, 'Invented.']));
    expect(under(says)).toEqual([bands, rules, sources ?? stated]);
  });

  it('are stated where its row and those of another size differ', () => {
    const table = '{ sizes: { 0.020 under: { new: { max: 2.98 } }, 0.010 under: { new: { max: 2.99 } } } }';
    expect(under(table)).toEqual([{ new: ' to 2.9900 (2.99)' }, { new: 'stated' }, { new: 'Invented.' }]);
    expect(under('{ sizes: { 0.020 under: { new: { max: 2.98 } } } }')).toEqual([{}, {}, {}]);
  });

  it('are moved by how far its dimension lies from standard, where its row says nothing and where its halves differ', () => {
    const halves: MadeSize = { grade: undefined, by: fraction(-254_000) };
    const table = '{ new: { max: 3 }, sizes: { 0.010 under: { new: { max: 2.9905 } } } }';
    expect(under(table, halves)[0]).toEqual({ new: ' to 2.9990 (2.999)' });
    expect(under(table, { ...TEN_UNDER, by: fraction(0) })[0]).toEqual({ new: ' to 2.9905 (2.9905)' });
    expect(under('{ new: { max: 3 } }', { ...TEN_UNDER, by: fraction(0) })).toEqual([
      { new: ' to 3.0000 (3)' },
      { new: 'stated' },
      { new: 'Invented.' },
    ]);
  });

  it('are moved altogether where one of them was', () => {
    expect(ruleOf({ rules: { new: 'stated', wear: 'moved' } })).toBe('moved');
    expect(ruleOf({ rules: { new: 'stated' } })).toBe('stated');
    expect(ruleOf({ rules: {} })).toBe('stated');
  });

  it('are printed for the sizes of the table, at a position and around it', () => {
    const all = files(
      'main_journal_diameter: { sizes: { 0.010 under: { new: { max: 3 } } }, at: { 2: { sizes: { 0.020 under: { new: { max: 3 } } } } } }',
    );
    const { engine, registry } = shopOf(all);
    const measure = registry.find('main_journal_diameter');
    const [document] = engine?.limits ?? [];
    if (engine === undefined || measure === undefined || document === undefined) throw new Error();
    const { layout } = engine.document;
    const printed = layout
      .positionsOf(measure.family)
      .map((at) => gradesPrinted(document, layout, measure, at).map((each) => gradeText(each)));
    expect(printed).toEqual([['0.010 under'], ['0.020 under', '0.010 under'], ['0.010 under']]);
    const none: LimitsDocument = { ...document, limits: new Map() };
    expect(layout.positionsOf(measure.family).map((at) => gradesPrinted(none, layout, measure, at))).toEqual([
      [],
      [],
      [],
    ]);
  });
});
