import { describe, expect, it } from 'vitest';
import type { HalfClasses } from '../../../src/documents/limits/choices.ts';
import { fitsOf, isShort } from '../../../src/plan/fit/fits.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf, lengthIn } from '../planOf.ts';

const LIMITS = `main_journal_diameter: { new: 49.990 to 50.010, wear: { min: 49.950 } }
main_bearing_clearance: { new: 0.030 to 0.070 }`;

interface Said {
  readonly shells: string;
  readonly holes?: string;
  readonly shafts?: string;
  readonly limits?: string;
  readonly choices?: string;
  readonly engine?: string;
  readonly more?: string;
}

const shop = ({
  shells,
  holes = '1: 55.000, 2: 55.010',
  shafts = '1: 50.000, 2: 50.000',
  limits = LIMITS,
  choices = '',
  engine = '',
  more = '',
}: Said): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
  'stock.yaml': `kind: stock\nshells: [${shells}]\n`,
  'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { mains: 2 }\n${engine}`,
  'e/limits.yaml': limitsOf(limits, choices),
  'e/session.yaml': sessionOf(
    'machined',
    `- { measure: main_housing_bore, at: { ${holes} } }\n- { measure: main_journal_diameter, at: { ${shafts} } }`,
    more,
  ),
});

const shell = (code: string, wall: string, count: number, more = ''): string =>
  `{ code: ${code}, fits: main shells, wall: ${wall}, count: ${count}${more} }`;

const classText = (classes: HalfClasses | undefined): string =>
  classes === undefined ? 'none' : [...new Set([classes.upper, classes.lower])].join('/');

function fitIn(said: Said) {
  const fits = fitsOf(contextOf(shop(said)));
  const [fit, ...others] = fits.shells;
  expect(others).toEqual([]);
  return (
    fit && {
      fit: [fit.part.id, fit.clearance.id, fit.waitsFor?.id ?? '', isShort(fits) ? 'short' : ''].join('|'),
      places: fit.places.map(({ position, chosen, clearance, wanted, table, problems }) =>
        [
          position.name,
          chosen === undefined ? '-' : `${chosen.upper.code}/${chosen.lower.code}`,
          clearance === undefined
            ? '-'
            : `${lengthIn('mm', clearance.least, 4)} to ${lengthIn('mm', clearance.greatest, 4)}`,
          wanted === undefined ? 'nothing wanted' : lengthIn('mm', wanted.middle),
          table === undefined ? '' : `${table.housing}/${table.journal}: ${classText(table.classes)}`,
          ...problems.map((each) =>
            each.kind === 'not measured'
              ? `${each.kind} ${each.of.id}`
              : each.kind === 'nothing fits'
                ? `${each.kind} ${lengthIn('mm', each.wall, 4)}`
                : each.kind === 'not as stamped'
                  ? `${each.kind} ${each.of.id} ${each.stamp} ${each.row.position.name}`
                  : 'classes' in each
                    ? `${each.kind} ${classText(each.classes)}`
                    : each.kind,
          ),
        ].join('; '),
      ),
    }
  );
}

const FOR_MAINS = 'main_shell|main_bearing_clearance|';

describe('shells of the shelf', () => {
  it('are chosen for all places together, and the clearance takes in what their walls differ by', () => {
    expect(fitIn({ shells: `${shell('A', '2.472 to 2.478', 2)}, ${shell('B', '2.480', 2)}` })).toEqual({
      fit: `${FOR_MAINS}|`,
      places: ['1; A/A; 0.0440 to 0.0560; 0.050; ', '2; B/B; 0.0500 to 0.0500; 0.050; '],
    });
  });

  it('take in what the readings differ by as well', () => {
    const read = { holes: '1: 55.000, 2: 55.000', shafts: '1: 50.000, 2: 50.000' };
    const apart = shop({ shells: shell('A', '2.474 to 2.476', 4), ...read });
    const blocks =
      '- { measure: main_housing_bore, stations: [front, rear], at: { 1: [54.998, 55.004], 2: [55.000, 55.000] } }\n- { measure: main_journal_diameter, at: { 1: 50.000, 2: 50.000 } }';
    const [fit] = fitsOf(contextOf({ ...apart, 'e/session.yaml': sessionOf('machined', blocks) })).shells;
    expect(
      fit?.places.map(
        ({ clearance }) =>
          clearance && [clearance.least, clearance.greatest].map((each) => lengthIn('mm', each)),
      ),
    ).toEqual([
      ['0.046', '0.056'],
      ['0.048', '0.052'],
    ]);
  });

  it.each([
    ['none', ''],
    ['one half', `, ${shell('D', '2.487', 1)}`],
  ])('are no fewer where the shelf has %s more', (_, more) => {
    const limits = 'main_bearing_clearance: { new: 0.045 to 0.055 }';
    const choices = 'mixing: [{ fits: main shells, differ_by: 0.012, thicker: lower }]\n';
    const holes = '1: 55.000, 2: 55.012';
    const shells = `${shell('C', '2.475', 2)}${more}`;
    expect(fitIn({ shells, holes, limits, choices })?.places.map((place) => place.slice(0, 6))).toEqual([
      '1; C/C',
      '2; -; ',
    ]);
  });

  it('go to as many places as they do for, and the others are named', () => {
    expect(fitIn({ shells: shell('A', '2.475', 3) })).toEqual({
      fit: 'main_shell|main_bearing_clearance||short',
      places: ['1; A/A; 0.0500 to 0.0500; 0.050; ', '2; -; -; 0.050; ; too few'],
    });
  });

  it('are what each half would have to be where none brings a place inside, and the others are served', () => {
    expect(fitIn({ shells: shell('A', '2.475', 4), holes: '1: 55.000, 2: 55.100' })).toEqual({
      fit: `${FOR_MAINS}|short`,
      places: ['1; A/A; 0.0500 to 0.0500; 0.050; ', '2; -; -; 0.050; ; nothing fits 2.5250'],
    });
  });

  it('are inside exactly on the limit', () => {
    expect(fitIn({ shells: shell('A', '2.465', 4), holes: '1: 55.000, 2: 55.000' })?.places[0]).toBe(
      '1; A/A; 0.0700 to 0.0700; 0.050; ',
    );
    expect(fitIn({ shells: shell('A', '2.485', 4), holes: '1: 55.000, 2: 55.000' })?.places[0]).toBe(
      '1; A/A; 0.0300 to 0.0300; 0.050; ',
    );
  });

  it('name what was not measured', () => {
    expect(fitIn({ shells: shell('A', '2.475', 4), holes: '1: 55.000, 2: ~', shafts: '1: ~, 2: ~' })).toEqual(
      {
        fit: `${FOR_MAINS}|short`,
        places: [
          '1; -; -; 0.050; ; not measured main_journal_diameter',
          '2; -; -; 0.050; ; not measured main_housing_bore; not measured main_journal_diameter',
        ],
      },
    );
  });

  it('are wanted by nobody without limits of new parts on both sides', () => {
    const limits = LIMITS.replace('0.030 to 0.070', '{ max: 0.070 }');
    expect(fitIn({ shells: shell('A', '2.475', 4), limits })).toEqual({
      fit: `${FOR_MAINS}|short`,
      places: ['1; -; -; nothing wanted; ; no limits', '2; -; -; nothing wanted; ; no limits'],
    });
  });

  it('go by the middle of the target where one is stated', () => {
    const limits = LIMITS.replace('new: 0.030 to 0.070', 'new: 0.030 to 0.070, target: 0.030 to 0.040');
    expect(
      fitIn({
        shells: `${shell('A', '2.475', 4)}, ${shell('B', '2.482', 4)}`,
        holes: '1: 55.000, 2: 55.000',
        limits,
      })?.places[0],
    ).toBe('1; B/B; 0.0360 to 0.0360; 0.035; ');
  });

  it('wait for journals that are ground first, and for a crankshaft that is renewed', () => {
    const worn = { shells: shell('A', '2.475', 4), shafts: '1: 49.940, 2: 50.000\n', more: '' };
    expect(fitIn({ ...worn, shafts: '1: 49.940, 2: 50.000' })).toEqual({
      fit: 'main_shell|main_bearing_clearance|main_journal|',
      places: [],
    });
    const limits = LIMITS.replace('wear: { min: 49.950 }', 'wear: { min: 49.950 }, last_size: 49.945');
    expect(fitIn({ ...worn, shafts: '1: 49.940, 2: 50.000', limits })).toEqual({
      fit: 'main_shell|main_bearing_clearance|crankshaft|',
      places: [],
    });
  });

  it('are of the size of the journal', () => {
    const ground = {
      shafts: '1: 49.750, 2: 49.750',
      holes: '1: 55.000, 2: 55.000',
      more: 'machined: [{ part: main journals, size: 0.25 under }]\n',
    };
    const shells = `${shell('S', '2.600', 4)}, ${shell('U', '2.600', 4, ', size: 0.25 under')}`;
    expect(fitIn({ ...ground, shells })?.places).toEqual([
      '1; U/U; 0.0500 to 0.0500; 0.050; ',
      '2; U/U; 0.0500 to 0.0500; 0.050; ',
    ]);
  });

  it('are not spoken of where the shelf has none of them', () => {
    expect(fitIn({ shells: '{ code: R, fits: rod shells, wall: 2.475, count: 4 }' })).toBeUndefined();
    expect(fitIn({ shells: shell('A', '2.475', 0) })).toBeUndefined();
  });
});

describe('halves of two thicknesses', () => {
  const shells = `${shell('N', '2.470', 1)}, ${shell('K', '2.480', 1)}, ${shell('W', '2.490', 1)}`;
  const mixed = (mixing: string) =>
    fitIn({ shells, holes: '1: 55.000, 2: 55.500', choices: `mixing: [${mixing}]\n` })
      ?.places[0]?.split(';')
      .slice(0, 3)
      .join(';');

  it.each([
    [
      'lie the thicker below',
      '{ fits: main shells, differ_by: 0.010, thicker: lower }',
      '1; N/K; 0.0500 to 0.0500',
    ],
    [
      'lie the thicker above where that is said',
      '{ fits: main shells, differ_by: 0.010, thicker: upper }',
      '1; K/N; 0.0500 to 0.0500',
    ],
    [
      'never differ by more than half a thou',
      '{ fits: main shells, differ_by: 0.020, thicker: lower }',
      '1; N/K; 0.0500 to 0.0500',
    ],
    [
      'never differ by more than the limits say',
      '{ fits: main shells, differ_by: 0.009, thicker: lower }',
      '1; -; -',
    ],
    [
      'are alike where mixing is said of others',
      '{ fits: rod shells, differ_by: 0.010, thicker: lower }',
      '1; -; -',
    ],
  ])('%s', (_, mixing, chosen) => expect(mixed(mixing)).toBe(chosen));
});

describe('a maker’s table', () => {
  const TABLE = `select_fit:
  - fits: rod shells
    table: { 1: { A: wrong, B: wrong }, 2: { A: wrong, B: wrong } }
  - fits: main shells
    table: { 1: { A: red, B: blue }, 2: { A: blue, B: black } }
    housings: { 1: 54.995 to 55.005, 2: 55.005 to 55.015 }
    journals: { A: 49.995 to 50.005, B: 49.985 to 49.995 }
`;
  const stamps = (first: string, second: string, housings = '1: 1, 2: 1'): string =>
    `stamps: { main_housings: { ${housings} }, main_journals: { 1: ${first}, 2: ${second} } }\n`;
  const SHELLS = `${shell('R', '2.475', 4, ', class: red')}, ${shell('B', '2.480', 4, ', class: blue')}`;
  const even = { holes: '1: 55.000, 2: 55.000', choices: TABLE };

  it('is followed where its shell lies inside, though another comes nearer to the middle', () => {
    expect(
      fitIn({
        ...even,
        shells: `${SHELLS}, ${shell('M', '2.472', 4)}`,
        engine: stamps('A', 'A'),
        shafts: '1: 50.005, 2: 49.995',
      })?.places,
    ).toEqual(['1; R/R; 0.0450 to 0.0450; 0.050; 1/A: red', '2; R/R; 0.0550 to 0.0550; 0.050; 1/A: red']);
  });

  it('says nothing of stamps that it has not, nor where nothing is stamped', () => {
    expect(fitIn({ ...even, shells: SHELLS, engine: stamps('A', 'Z') })?.places).toEqual([
      '1; R/R; 0.0500 to 0.0500; 0.050; 1/A: red',
      '2; R/R; 0.0500 to 0.0500; 0.050; 1/Z: none',
    ]);
    expect(
      fitIn({ ...even, shells: SHELLS, engine: 'stamps: { main_housings: { 1: 1, 2: 1 } }\n' })?.places[0],
    ).toBe('1; R/R; 0.0500 to 0.0500; 0.050; ');
  });

  it('gives way where its class is not on the shelf, or one half of it alone', () => {
    const places = (shells: string) => fitIn({ ...even, shells, engine: stamps('A', 'A') })?.places[0];
    expect(places(shell('B', '2.480', 4, ', class: blue'))).toBe(
      '1; B/B; 0.0400 to 0.0400; 0.050; 1/A: red; class not in stock red',
    );
    expect(
      places(`${shell('R', '2.475', 1, ', class: red')}, ${shell('B', '2.480', 4, ', class: blue')}`),
    ).toBe('1; B/B; 0.0400 to 0.0400; 0.050; 1/A: red; class not in stock red');
  });

  it('gives way at the places for which too few halves of its class are left, and serves them as well', () => {
    const served = (reds: number) =>
      fitIn({
        ...even,
        shells: `${shell('R', '2.475', reds, ', class: red')}, ${shell('B', '2.480', 4, ', class: blue')}`,
        engine: stamps('A', 'A'),
      })?.places;
    const byTable = (place: number) => `${place}; R/R; 0.0500 to 0.0500; 0.050; 1/A: red`;
    const bySizes = (place: number, why: string) =>
      `${place}; B/B; 0.0400 to 0.0400; 0.050; 1/A: red; ${why} red`;
    expect(served(1)).toEqual([bySizes(1, 'class not in stock'), bySizes(2, 'class not in stock')]);
    expect(served(3)).toEqual([byTable(1), bySizes(2, 'class taken')]);
    expect(served(4)).toEqual([byTable(1), byTable(2)]);
  });

  it('may name one shell above and another below, whatever `mixing:` says, and takes them of the shelf so', () => {
    const choices = TABLE.replace('{ A: red, B: blue }', '{ A: { upper: blue, lower: red }, B: blue }');
    const places = (shells: string) =>
      fitIn({ ...even, choices, shells, engine: stamps('A', 'A') })?.places.map((each) => each.slice(3));
    const [red, blue] = [
      (count: number) => shell('R', '2.465', count, ', class: red'),
      (count: number) => shell('B', '2.485', count, ', class: blue'),
    ];
    const both = 'B/R; 0.0500 to 0.0500; 0.050; 1/A: blue/red';
    const alike = 'B/B; 0.0300 to 0.0300; 0.050; 1/A: blue/red';
    expect(places(`${red(2)}, ${blue(2)}`)).toEqual([both, both]);
    expect(places(`${red(1)}, ${blue(3)}`)).toEqual([both, `${alike}; class taken blue/red`]);
    expect(places(`${red(0)}, ${blue(4)}`)).toEqual([
      `${alike}; class not in stock blue/red`,
      `${alike}; class not in stock blue/red`,
    ]);
  });

  it('gives way where its shell lies outside', () => {
    expect(
      fitIn({
        ...even,
        shells: `${shell('R', '2.500', 4, ', class: red')}, ${shell('B', '2.480', 4, ', class: blue')}`,
        engine: stamps('A', 'A'),
      })?.places[0],
    ).toBe('1; B/B; 0.0400 to 0.0400; 0.050; 1/A: red; table is outside red');
  });

  it('is held against what was measured, of the housing and of the journal, and on the edge is inside', () => {
    const read = (holes: string, shafts: string) =>
      fitIn({ ...even, shells: SHELLS, engine: stamps('A', 'A'), holes, shafts })?.places.map((each) =>
        each.split('; ').slice(5).join('; '),
      );
    expect(read('1: 54.995, 2: 55.005', '1: 50.005, 2: 49.995')).toEqual(['', '']);
    expect(read('1: 54.994, 2: 55.006', '1: 50.000, 2: 50.000')).toEqual([
      'not as stamped main_housing_bore 1 1',
      'not as stamped main_housing_bore 1 2',
    ]);
    expect(read('1: 55.000, 2: 55.000', '1: 50.006, 2: 49.994')).toEqual([
      'not as stamped main_journal_diameter A 1',
      'not as stamped main_journal_diameter A 2',
    ]);
  });

  it.each([
    [
      'a part was machined, that place alone',
      'machined: [{ part: main journal 2, size: std }]\n',
      ['1/A: red', ''],
    ],
    ['is void where a housing was machined', 'machined: [{ part: main housing 1 }]\n', ['', '1/A: red']],
    ['is void where another part is in its place', 'replaced: [{ part: crankshaft }]\n', ['', '']],
    [
      'holds where the engine was only put together with its own',
      'fitted: { crankshaft: { condition: used } }\n',
      ['1/A: red', '1/A: red'],
    ],
  ])('%s', (_, more, tables) => {
    const places = fitIn({ ...even, shells: SHELLS, engine: stamps('A', 'A'), more })?.places;
    expect(places?.map((each) => each.split('; ')[4])).toEqual(tables);
  });

  it('is void where the journals were ground, whoever did it', () => {
    const ground = {
      engine: `${stamps('A', 'A')}fitted: { crankshaft: { main: 0.25 under } }\n`,
      shafts: '1: 49.750, 2: 49.750',
    };
    const places = fitIn({
      ...even,
      ...ground,
      shells: shell('U', '2.600', 4, ', size: 0.25 under'),
    })?.places;
    expect(places).toEqual(['1; U/U; 0.0500 to 0.0500; 0.050; ', '2; U/U; 0.0500 to 0.0500; 0.050; ']);
  });
});
