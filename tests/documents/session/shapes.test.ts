import { describe, expect, it } from 'vitest';
import { figuresOf, readingOf, refusedIn } from '../readBlock.ts';

const journal = (rest: string) => `{ measure: main_journal_diameter, ${rest} }`;
const stationsOf = (block: string, more = {}) => readingOf(block, more).stations.map(({ name }) => name);
const directionsOf = (block: string, more = {}) => readingOf(block, more).directions;
const GRIDS = {
  's.yaml':
    'kind: shop\ngrids: { main_journal: { stations: { front: 0.25 in, rear: 1.50 in }, directions: [throw, square] }, cylinder: { stations: [top, middle, bottom] } }\n',
};

describe('what stands at a position', () => {
  it.each([
    ['a number', 'at: { 1: 3.2478 }', [['3.2478']]],
    ['a number with its unit', 'at: { 1: 82.4941 mm }', [['3.2478']]],
    ['nothing taken', 'at: { 1: ~ }', [['~']]],
    ['a value with a note', 'at: { 1: { value: 3.2478, note: rough } }', [['3.2478']]],
    ['a note alone', 'at: { 1: { note: could not get at it } }', [['~']]],
    ['a slip put right', 'at: { 1: { value: 3.2478, was: 3.2487, why: misread } }', [['3.2478']]],
    [
      'a list along the stations',
      'stations: [front, rear], at: { 1: [3.2478, 3.2477] }',
      [['3.2478'], ['3.2477']],
    ],
    [
      'a list along the directions',
      'directions: [a, b], at: { 1: [3.2478, 3.2477] }',
      [['3.2478', '3.2477']],
    ],
    [
      'rows of stations and columns of directions',
      'stations: [front, rear], directions: [a, b], at: { 1: [[3.2478, 3.2477], [3.2476, 3.2475]] }',
      [
        ['3.2478', '3.2477'],
        ['3.2476', '3.2475'],
      ],
    ],
    [
      'a flat list as long as stations × directions, station by station',
      'stations: [front, rear], directions: [a, b], at: { 1: [3.2478, 3.2477, 3.2476, 3.2475] }',
      [
        ['3.2478', '3.2477'],
        ['3.2476', '3.2475'],
      ],
    ],
    ['one station alone', 'at: { 1: [3.2478] }', [['3.2478']]],
    ['stations by key', 'at: { 1: { front: 3.2478, rear: 3.2477 } }', [['3.2478'], ['3.2477']]],
    ['a list with one not taken', 'stations: [front, rear], at: { 1: [3.2478, ~] }', [['3.2478'], ['~']]],
    [
      'a point with a note inside a list',
      'stations: [front, rear], at: { 1: [{ value: 3.2478, note: scored }, 3.2477] }',
      [['3.2478'], ['3.2477']],
    ],
  ])('%s', (_, rest, expected) => expect(figuresOf(readingOf(journal(rest)))).toEqual(expected));

  it('keeps the names of stations and directions', () => {
    const grid = journal('stations: [front, rear], directions: [a, b], at: { 1: [[3.1, 3.1], [3.1, 3.1]] }');
    expect(stationsOf(grid)).toEqual(['front', 'rear']);
    expect(directionsOf(grid)).toEqual(['a', 'b']);
    expect(stationsOf(journal('at: { 1: { front: 3.1, rear: 3.1 } }'))).toEqual(['front', 'rear']);
    expect(stationsOf(journal('at: { 1: 3.1 }'))).toEqual([undefined]);
  });

  it('keeps notes, those in lists too', () => {
    const noted = journal(
      'stations: [a, b], at: { 1: [{ value: 3.1, note: scored }, { value: 3.1, note: polished }] }',
    );
    expect(readingOf(noted).notes).toEqual(['scored', 'polished']);
  });

  it('gives every point a pointer of its own', () => {
    const rows = readingOf(
      journal('stations: [a, b], directions: [c, d], at: { 1: [3.1, 3.2, 3.3, 3.4] }'),
    ).rows.flat();
    expect(new Set(rows.map((point) => point?.pointer)).size).toBe(4);
  });
});

describe('shell halves', () => {
  const shell = (at: string) => `{ measure: main_shell_thickness, at: { 3: ${at} } }`;

  it.each([
    ['by name', '{ upper: 0.1247, lower: 0.1252 }'],
    ['as two figures', '[0.1247, 0.1252]'],
  ])('%s are the upper and the lower', (_, at) => {
    expect(stationsOf(shell(at))).toEqual(['upper', 'lower']);
    expect(figuresOf(readingOf(shell(at)))).toEqual([['0.1247'], ['0.1252']]);
  });

  it('may have a note beside them, which is no third', () => {
    const noted = shell('{ upper: 0.1247, lower: 0.1252, note: polished }');
    expect(stationsOf(noted)).toEqual(['upper', 'lower']);
    expect(readingOf(noted).notes).toEqual(['polished']);
  });

  it('are not three', () =>
    expect(refusedIn(shell('[0.1247, 0.1252, 0.1250]'))).toEqual(['value [0.1247, 0.1252, 0.1250]']));
});

describe('the shop’s grids', () => {
  it('name a flat list that says nothing of itself, and carry the distances', () => {
    const { stations, directions } = readingOf(journal('at: { 1: [3.1, 3.2, 3.3, 3.4] }'), GRIDS);
    expect(stations.map(({ name, distance }) => [name, distance?.n])).toEqual([
      ['front', 63_500_000n],
      ['rear', 381_000_000n],
    ]);
    expect(directions).toEqual(['throw', 'square']);
  });

  it('give the distance of a station named by key', () => {
    const [front] = readingOf(journal('at: { 1: { front: 3.1, rear: 3.2 } }'), GRIDS).stations;
    expect(front?.distance?.n).toBe(63_500_000n);
  });

  it('serve every diameter of the part, and give way to what the block says', () => {
    expect(stationsOf('{ measure: cylinder_bore, at: { 1: [4.1, 4.2, 4.3] } }', GRIDS)).toEqual([
      'top',
      'middle',
      'bottom',
    ]);
    expect(stationsOf('{ measure: cylinder_bore, stations: [a, b], at: { 1: [4.1, 4.2] } }', GRIDS)).toEqual([
      'a',
      'b',
    ]);
  });

  it('do not make a list of another length right', () => {
    expect(refusedIn('{ measure: cylinder_bore, at: { 1: [4.1, 4.2] } }', GRIDS)).toEqual([
      'value [4.1, 4.2]',
    ]);
    expect(refusedIn(journal('at: { 1: [3.1, 3.2, 3.3] }'), GRIDS)).toEqual(['value [3.1, 3.2, 3.3]']);
  });
});

describe('a shape that can be meant in two ways is refused, at its place', () => {
  it.each([
    ['a list that nothing names', 'at: { 1: [3.2478, 3.2477] }', ['value [3.2478, 3.2477]']],
    [
      'a list longer than its stations',
      'stations: [front, rear], at: { 1: [3.1, 3.2, 3.3] }',
      ['value [3.1, 3.2, 3.3]'],
    ],
    ['a list shorter than its stations', 'stations: [a, b, c], at: { 1: [3.1, 3.2] }', ['value [3.1, 3.2]']],
    [
      'a list longer than its directions',
      'directions: [a, b], at: { 1: [3.1, 3.2, 3.3] }',
      ['value [3.1, 3.2, 3.3]'],
    ],
    ['ragged rows', 'stations: [a, b], directions: [c, d], at: { 1: [[3.1, 3.2], [3.3]] }', ['value [3.3]']],
    [
      'more rows than stations',
      'stations: [a], directions: [c, d], at: { 1: [[3.1, 3.2], [3.3, 3.4]] }',
      ['value [[3.1, 3.2], [3.3, 3.4]]'],
    ],
    [
      'rows whose columns nothing names',
      'stations: [a, b], at: { 1: [[3.1, 3.2], [3.3, 3.4]] }',
      ['value [[3.1, 3.2], [3.3, 3.4]]'],
    ],
    [
      'rows and single figures in one list',
      'stations: [a, b], directions: [c, d], at: { 1: [[3.1, 3.2], 3.3] }',
      ['value 3.3'],
    ],
    ['an empty list', 'at: { 1: [] }', ['value []']],
    ['an empty list of lists', 'at: { 1: [[]] }', ['value []']],
  ])('%s', (_, rest, places) => expect(refusedIn(journal(rest))).toEqual(places));

  it.each([
    ['a name that is no station', 'at: { 1: { middel: 3.1 } }', 'unknown-key'],
    ['text', 'at: { 1: about three }', 'type'],
    ['true', 'at: { 1: yes }', 'type'],
    ['a key that is no position', 'at: { 6: 3.1 }', 'unknown-position'],
    ['two of one position', 'at: { 1: 3.1, "1": 3.2 }', 'duplicate-key'],
    ['no place at all', 'with: mic', 'missing-key'],
    ['a value for what has positions', 'value: 3.1', 'value'],
  ])('%s is no reading', (_, rest, code) =>
    expect(refusedIn(journal(rest)).map((each) => each.split(' ')[0])).toContain(code),
  );
});

describe('where a thing was measured', () => {
  it.each([
    ['the whole engine beside the measure', '{ measure: crankshaft_end_play, value: 0.009 }', 'engine'],
    ['the whole engine by name', '{ measure: crankshaft_end_play, at: { engine: 0.009 } }', 'engine'],
    ['a number', journal('at: { 5: 3.1 }'), '5'],
    ['a number in quotes', journal('at: { "5": 3.1 }'), '5'],
    ['a label', journal('at: { flywheel end: 3.1 }'), '5'],
    ['a step', '{ measure: turning_torque, after: [{ step: piston 1, value: 2.9 }] }', 'piston 1'],
  ])('%s', (_, block, position) => expect(readingOf(block).position.name).toBe(position));

  it('of a turning torque running counts before value, and ~ is none', () => {
    const step = (rest: string) =>
      figuresOf(readingOf(`{ measure: turning_torque, after: [{ step: a, ${rest} }] }`), 1, 'lbf in');
    expect(step('running: 2.9, breakaway: 8')).toEqual([['2.9']]);
    expect(step('value: 3.1')).toEqual([['3.1']]);
  });

  it.each([
    ['a rear that is none', '{ measure: crankshaft_end_play, at: { rear: 0.009 } }', 'unknown-position rear'],
    ['a fifth cylinder of four', '{ measure: cylinder_bore, at: { 5: 4.1 } }', 'unknown-position 5'],
    [
      'a name that nobody knows',
      '{ measure: main_jornal_diameter, at: { 5: 4.1 } }',
      'unknown-measure main_jornal_diameter',
    ],
  ])('%s is refused', (_, block, place) => expect(refusedIn(block)).toEqual([place]));
});
