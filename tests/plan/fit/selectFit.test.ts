import { describe, expect, it } from 'vitest';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import type { ShellFit } from '../../../src/plan/fit/shellFit.ts';
import { planContext } from '../../../src/plan/work/context.ts';
import { toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { type Files, limitsOf, reportOf, sessionOf, shopOf } from '../../shopOf.ts';

/** By its name the smallest and the largest size of each class. */
type Classes = Readonly<Record<string, readonly [string, string]>>;

/** A printed table: classes of housings, of journals and of shells, and the shell of every cell. */
interface Published {
  readonly source: string;
  readonly part: 'main' | 'rod';
  /** The clearance that every cell gives, smallest and largest. */
  readonly clearance: readonly [string, string];
  readonly housings: Classes;
  readonly journals: Classes;
  readonly shells: Classes;
  /** A row a housing, a column a journal; `Green/Yellow` is Green above and Yellow below. */
  readonly cells: readonly string[];
}

/** Classes of one width: every one so much above the one before it, or below it. */
const rising = (names: readonly string[], first: readonly [number, number], step: number): Classes =>
  Object.fromEntries(
    names.map((name, index) => {
      const [low, high] = first.map((each) => (each + index * step).toFixed(4));
      return [name, [low ?? '', high ?? ''] as const];
    }),
  );

const COLOURS = ['Red', 'Pink', 'Yellow', 'Green', 'Brown', 'Black', 'Blue'];

const FOUR_BY_FOUR_COLOURS = [
  'Red Pink Yellow Green',
  'Pink Yellow Green Brown',
  'Yellow Green Brown Black',
  'Green Brown Black Blue',
];

const NINE_RODS: Published = {
  source: 'Honda shop manual, January 1982, p. 12-10, rods by pins',
  part: 'rod',
  clearance: ['0.020', '0.044'],
  housings: rising(['1', '2', '3'], [39.0, 39.008], 0.008),
  journals: rising(['A', 'B', 'C'], [35.992, 36.0], -0.008),
  shells: rising(['A', 'B', 'C', 'D', 'E'], [1.502, 1.506], -0.004),
  cells: ['E D C', 'D C B', 'C B A'],
};

const SUM_OF_TWO_MARKS: Published = {
  source: 'Toyota 1996 Land Cruiser, p. EM-89 (W1): block + crank = shell',
  part: 'main',
  clearance: ['0.042', '0.060'],
  housings: rising(['1', '2', '3'], [74.026, 74.032], 0.006),
  journals: rising(['1', '2', '3'], [68.994, 69.0], -0.006),
  shells: rising(['2', '3', '4', '5', '6'], [2.489, 2.492], 0.003),
  cells: ['2 3 4', '3 4 5', '4 5 6'],
};

const COLOURS_AROUND_TWO: Published = {
  source: 'Honda BF40D, p. 10-19: classes of one width, centre 2.0 mm',
  part: 'main',
  // Its printed aim is .028 to .038; blocks and journals are invented so that each cell gives it.
  clearance: ['0.024', '0.042'],
  housings: rising(['A', 'B', 'C', 'D'], [54.0, 54.006], 0.006),
  journals: rising(['1', '2', '3', '4'], [49.97, 49.976], -0.006),
  shells: rising(COLOURS, [1.997, 2.0], 0.003),
  cells: FOUR_BY_FOUR_COLOURS,
};

const SHELLS_THAT_OVERLAP: Published = {
  source: 'Suzuki 1.8, page 513: block A B by crank 1 2 3',
  part: 'main',
  // The page prints the shells alone; blocks and journals are invented so that each cell lies inside.
  clearance: ['0.010', '0.030'],
  housings: rising(['A', 'B'], [54.0, 54.003], 0.006),
  journals: rising(['1', '2', '3'], [49.993, 49.996], -0.006),
  shells: rising(['Green', 'Black', 'none', 'Yellow'], [1.993, 1.997], 0.003),
  cells: ['Green Black none', 'Black none Yellow'],
};

const TWELVE_RODS: Published = {
  source:
    'Toyota 2007 Tundra, 2UZ-FE: shells 2 to 7 for rods; .020 to .038 is computed, .021 to .047 printed',
  part: 'rod',
  clearance: ['0.020', '0.038'],
  // The shells are printed; rods and pins are invented, in classes that leave every cell alike.
  housings: rising(['1', '2', '3', '4'], [56.0, 56.006], 0.006),
  journals: rising(['1', '2', '3'], [52.994, 53.0], -0.006),
  shells: rising(['2', '3', '4', '5', '6', '7'], [1.487, 1.49], 0.003),
  cells: ['2 3 4', '3 4 5', '4 5 6', '5 6 7'],
};

const COLOURS_BELOW_TWO: Published = {
  source: 'Honda colours of a tuning page, 2014: Red thinnest, Blue thickest, .003 mm each',
  part: 'main',
  // The shells are printed; blocks and journals are invented so that each cell gives the middle of these.
  clearance: ['0.020', '0.041'],
  housings: rising(['A', 'B', 'C', 'D'], [59.0, 59.006], 0.006),
  journals: rising(['1', '2', '3', '4'], [54.978, 54.984], -0.006),
  shells: rising(COLOURS, [1.992, 1.995], 0.003),
  cells: FOUR_BY_FOUR_COLOURS,
};

const SUM_OF_EIGHT: Published = {
  source: 'Toyota 2009 Corolla, 2AZ-FE: block 3 + crank 5 = 8, which is bearing 3',
  part: 'main',
  clearance: ['0.017', '0.040'],
  // Shells and clearance are printed; what the marks stand for is invented.
  housings: { 3: ['59.019', '59.023'] },
  journals: { 5: ['54.990', '54.992'] },
  shells: {
    1: ['1.993', '1.996'],
    2: ['1.997', '1.999'],
    3: ['2.000', '2.002'],
    4: ['2.003', '2.005'],
  },
  cells: ['3'],
};

const SUM_OF_SEVENTEEN: Published = {
  source: 'Toyota 2009 Sienna, 2GR-FE: block 11 + crank 06 = 17, which is bearing 3; sizes of the 2GR-FSE',
  part: 'main',
  clearance: ['0.018', '0.036'],
  // Journals step down by a thousandth from 00 at 60.999 to 61.000; block and clearance are invented.
  housings: { 11: ['66.034', '66.036'] },
  journals: { '06': ['60.993', '60.994'] },
  shells: rising(['1', '2', '3', '4', '5'], [2.5, 2.503], 0.003),
  cells: ['3'],
};

/** Stamps that are the last digits of the size itself. */
const stamped = (base: number, stamps: readonly number[]): Classes =>
  Object.fromEntries(
    stamps.map((stamp) => {
      const size = base + stamp / 1000;
      return [String(stamp), [(size - 0.0005).toFixed(4), (size + 0.0005).toFixed(4)] as const];
    }),
  );

/** The edges of each band. Where two colours are printed the first is taken for the half above. */
const STAMPED_MAINS: Published = {
  source:
    'Yamaha F100, p. 226: journal 47.900 and block 54.000 and the stamp; from 6.023 Green/Yellow to 6.058 Red/Red',
  part: 'main',
  // Shells and clearance are invented: the page prints colours alone.
  clearance: ['0.024', '0.044'],
  housings: stamped(54.0, [15, 18, 19, 26, 27, 32, 34, 35, 41, 42, 50]),
  journals: stamped(47.9, [92]),
  shells: {
    Yellow: ['2.9925', '2.9935'],
    Green: ['2.9945', '2.9955'],
    Blue: ['3.0020', '3.0030'],
    Red: ['3.0090', '3.0110'],
  },
  cells: [
    ...['Green/Yellow', 'Green/Yellow', 'Blue/Green', 'Blue/Green', 'Blue', 'Blue', 'Blue'],
    ...['Red/Blue', 'Red/Blue', 'Red', 'Red'],
  ],
};

const STAMPED_RODS: Published = {
  source: 'Yamaha F100, p. 226: pin 43.900 and the stamp; from 3.025 Yellow/Yellow to 3.063 Blue/Red',
  part: 'rod',
  // Stamps of rods, shells and clearance are invented: the page prints bands and colours.
  clearance: ['0.020', '0.036'],
  housings: stamped(47.0, [17, 19, 20, 26, 27, 33, 34, 41, 42, 49, 50, 55]),
  journals: stamped(43.9, [92]),
  shells: {
    Yellow: ['1.4985', '1.4995'],
    Green: ['1.5045', '1.5055'],
    Blue: ['1.5125', '1.5135'],
    Red: ['1.5190', '1.5200'],
  },
  cells: [
    ...['Yellow', 'Yellow', 'Yellow/Green', 'Yellow/Green', 'Green', 'Green'],
    ...['Green/Blue', 'Green/Blue', 'Blue', 'Blue', 'Blue/Red', 'Blue/Red'],
  ],
};

const MARK_LESS_MARK: Published = {
  source:
    'Yamaha XJR1300 and XP500: rod less crank, 1 blue, 2 black, 3 brown, 4 green; printed 4 − 1 = 3 and 5 − 1 = 4',
  part: 'rod',
  // The rule is printed; sizes are invented.
  clearance: ['0.020', '0.044'],
  housings: rising(['2', '3', '4', '5'], [39.0, 39.008], 0.008),
  journals: { 1: ['35.992', '36.000'] },
  shells: rising(['blue', 'black', 'brown', 'green'], [1.486, 1.49], 0.004),
  cells: ['blue', 'black', 'brown', 'green'],
};

const TABLES = [
  NINE_RODS,
  SUM_OF_TWO_MARKS,
  COLOURS_AROUND_TWO,
  SHELLS_THAT_OVERLAP,
  TWELVE_RODS,
  COLOURS_BELOW_TWO,
  SUM_OF_EIGHT,
  SUM_OF_SEVENTEEN,
  STAMPED_MAINS,
  STAMPED_RODS,
  MARK_LESS_MARK,
];

const mid = ([low, high]: readonly [string, string]): string => ((Number(low) + Number(high)) / 2).toFixed(4);

/** A mark with a leading zero is written as text: some readers take it for base eight. */
const written = (name: string): string => (name.startsWith('0') ? `"${name}"` : name);

const halvesOf = (cell: string): readonly [string, string] => {
  const [upper = '', lower = upper] = cell.split('/');
  return [upper, lower];
};

const cellText = (cell: string): string => {
  const [upper, lower] = halvesOf(cell);
  return upper === lower ? upper : `{ upper: ${upper}, lower: ${lower} }`;
};

const rangesText = (classes: Classes): string =>
  `{ ${Object.entries(classes)
    .map(([name, [low, high]]) => `${written(name)}: ${low} to ${high}`)
    .join(', ')} }`;

/** One bearing of an engine, stamped so, and measured in the middle of its classes unless told otherwise. */
function filesFor(
  table: Published,
  housing: string,
  journal: string,
  more: { readonly read?: readonly [string, string]; readonly selects?: boolean } = {},
): Files {
  const isRod = table.part === 'rod';
  const [hole, shaft] = isRod
    ? ['rod_housing_bore', 'crankpin_diameter']
    : ['main_housing_bore', 'main_journal_diameter'];
  const [holes, shafts] = isRod ? ['rod_housings', 'crankpins'] : ['main_housings', 'main_journals'];
  const journals = Object.keys(table.journals);
  const rows = Object.keys(table.housings).map((name, row) => {
    const cells = table.cells[row]
      ?.split(' ')
      .map((shell, column) => `${written(journals[column] ?? '')}: ${cellText(shell)}`);
    return `${name}: { ${cells?.join(', ')} }`;
  });
  const [read, of] = more.read ?? [
    mid(table.housings[housing] ?? ['', '']),
    mid(table.journals[journal] ?? ['', '']),
  ];
  const select = `select_fit:\n  - fits: ${table.part} shells\n    table: { ${rows.join(', ')} }\n    housings: ${rangesText(table.housings)}\n    journals: ${rangesText(table.journals)}\n`;
  const shells = Object.entries(table.shells).map(
    ([name, [low, high]]) =>
      `  - { code: ${name}, class: ${name}, fits: ${table.part} shells, wall: ${low} to ${high}, count: 2 }\n`,
  );
  return {
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml': `kind: stock\nshells:\n${shells.join('')}`,
    'e/engine.yaml': `kind: engine\nname: One\nlayout: { cylinders: 1, mains: 1, crankpins: 1 }\nstamps: { ${holes}: { 1: ${housing} }, ${shafts}: { 1: ${written(journal)} } }\n`,
    'e/limits.yaml': limitsOf(
      `${table.part}_bearing_clearance: { new: ${table.clearance[0]} to ${table.clearance[1]} }`,
      more.selects === false ? '' : select,
    ),
    'e/session.yaml': sessionOf(
      'trial',
      `- { measure: ${hole}, at: { 1: ${read} } }\n- { measure: ${shaft}, at: { 1: ${of} } }`,
    ),
  };
}

function fitIn(files: Files): ShellFit | undefined {
  const { engine, state } = reportOf(files);
  if (state === undefined) throw new Error('no session');
  return fitsOf(planContext(engine, shopOf(files).registry, state)).shells[0];
}

const millimetres = (amount: Parameters<typeof fromBase>[0] | undefined): string =>
  amount === undefined ? '' : toDecimal(fromBase(amount, unitNamed('mm')), 3);

const cellsOf = (table: Published): readonly (readonly [string, string, string])[] =>
  Object.keys(table.housings).flatMap((housing, row) =>
    Object.keys(table.journals).map(
      (journal, column) => [housing, journal, table.cells[row]?.split(' ')[column] ?? ''] as const,
    ),
  );

describe.each(TABLES.map((table) => [table.source, table] as const))('%s', (_, table) => {
  it.each(cellsOf(table))(
    'housing %s by journal %s takes shell %s by its stamps',
    (housing, journal, shell) => {
      const [place] = fitIn(filesFor(table, housing, journal))?.places ?? [];
      expect([place?.chosen?.upper.code, place?.chosen?.lower.code]).toEqual(halvesOf(shell));
      expect(place?.problems).toEqual([]);
    },
  );
});

describe.each([NINE_RODS, SUM_OF_TWO_MARKS, TWELVE_RODS].map((table) => [table.source, table] as const))(
  '%s: the same shells are chosen without the stamps',
  (_, table) => {
    it.each(cellsOf(table))(
      'housing %s by journal %s takes shell %s by its sizes',
      (housing, journal, shell) => {
        const [place] = fitIn(filesFor(table, housing, journal, { selects: false }))?.places ?? [];
        expect([place?.chosen?.upper.code, place?.chosen?.lower.code]).toEqual([shell, shell]);
      },
    );

    it.each(cellsOf(table))(
      'every shell of the cell %s %s, %s, lies inside the printed clearance',
      (housing, journal, shell) => {
        const range = (classes: Classes, name: string): readonly [number, number] => {
          const [low = '', high = ''] = classes[name] ?? [];
          return [Math.round(Number(low) * 1000), Math.round(Number(high) * 1000)];
        };
        const [[hole, larger], [shaft, thicker], [thin, thick]] = [
          range(table.housings, housing),
          range(table.journals, journal),
          range(table.shells, shell),
        ];
        expect(
          [(hole - 2 * thick - thicker) / 1000, (larger - 2 * thin - shaft) / 1000].map((each) =>
            each.toFixed(3),
          ),
        ).toEqual(table.clearance);
      },
    );
  },
);

describe('a table that disagrees with what was measured', () => {
  it('is told where a size does not lie in the class of its stamp', () => {
    const [place] = fitIn(filesFor(NINE_RODS, '1', 'A', { read: ['39.010', '35.998'] }))?.places ?? [];
    expect(place?.problems.map(({ kind }) => kind)).toContain('not as stamped');
  });

  it('gives way where its shell would lie outside', () => {
    const [place] = fitIn(filesFor(NINE_RODS, '1', 'A', { read: ['39.020', '35.980'] }))?.places ?? [];
    expect(place?.problems.map(({ kind }) => kind)).toContain('table is outside');
    expect(place?.chosen?.upper.code).toBe('A');
  });

  it('is void once the journal was cut', () => {
    const files = filesFor(NINE_RODS, '1', 'A', { read: ['39.004', '35.988'] });
    const cut = {
      ...files,
      'e/session.yaml': `${files['e/session.yaml']}machined: [{ part: crankpins, size: std }]\n`,
    };
    const [place] = fitIn(cut)?.places ?? [];
    expect(place?.table).toBeUndefined();
    expect(place?.chosen?.upper.code).toBe('D');
  });
});

describe('stock', () => {
  it('of another job is not offered', () => {
    const files = filesFor(NINE_RODS, '1', 'A');
    const taken = {
      ...files,
      'stock.yaml': (files['stock.yaml'] ?? '').replace('code: E,', 'code: E, reserved: { 2417: 1 },'),
    };
    const [place] = fitIn(taken)?.places ?? [];
    expect(place?.chosen?.upper.code).toBe('D');
    const own = { ...taken, 'e/engine.yaml': `${files['e/engine.yaml']}job: { number: 2417 }\n` };
    expect(fitIn(own)?.places[0]?.chosen?.upper.code).toBe('E');
  });

  it('that brings a place nowhere near says what would', () => {
    const [place] =
      fitIn(filesFor(NINE_RODS, '1', 'A', { read: ['39.104', '35.996'], selects: false }))?.places ?? [];
    const [problem] = place?.problems ?? [];
    expect(problem?.kind === 'nothing fits' ? millimetres(problem.wall) : '').toBe('1.538');
  });
});
