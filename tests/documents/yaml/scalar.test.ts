import { describe, expect, test } from 'vitest';
import { found, load } from '../load.ts';

/** Written, and what it means; a refusal is a diagnostic of that code. */
const TABLE: readonly (readonly [string, string | number | boolean | null])[] = [
  ['0', 0],
  ['7', 7],
  ['-7', -7],
  ['+7', 7],
  ['2.4980', 2.498],
  ['0.0020', 0.002],
  ['-0.0005', -0.0005],
  ['+0.0007', 0.0007],
  ['.0025', 0.0025],
  ['-.5', -0.5],
  ['11840', 11840],
  ['123456789012345', 123456789012345],
  ['0.123456789012345', 0.123456789012345],
  ['9', 9],
  ['9.5', 9.5],
  ['0.0000000000000000', 0],
  ['true', true],
  ['True', true],
  ['TRUE', true],
  ['false', false],
  ['False', false],
  ['Null', null],
  ['NULL', null],
  ['nulls', 'nulls'],
  [':1', ':1'],
  ['/1', '/1'],
  ['FALSE', false],
  ['null', null],
  ['~', null],
  ['', null],
  ['yes', 'yes'],
  ['no', 'no'],
  ['on', 'on'],
  ['off', 'off'],
  ['y', 'y'],
  ['N', 'N'],
  ['1,000', '1,000'],
  ['4,0010', '4,0010'],
  ['1/2', '1/2'],
  ['9/16-12', '9/16-12'],
  ['0.0635 mm', '0.0635 mm'],
  ['0.010 under', '0.010 under'],
  ['2026-02-03', '2026-02-03'],
  ['1-3-4-2', '1-3-4-2'],
  ['NaN', 'NaN'],
  ['Infinity', 'Infinity'],
  ['1I', '1I'],
  ['--5', '--5'],
  ['+', '+'],
  ['.', '.'],
  ['1.2.3', '1.2.3'],
];

const REFUSED: readonly (readonly [string, number])[] = [
  ['012', 12],
  ['05', 5],
  ['-007', -7],
  ['03.25', 3.25],
  ['0o14', 0],
  ['0x1F', 0],
  ['0b101', 0],
  ['1e5', 100000],
  ['.2479e1', 2.479],
  ['1E-3', 0.001],
  ['1e400', 0],
  ['5.', 5],
  ['0.', 0],
  ['1_000', 1000],
  ['3.24_78', 3.2478],
  ['0_5', 5],
  ['1_000.', 1000],
  ['1:30', 1],
  ['190:20:30', 190],
  ['.inf', 0],
  ['-.INF', 0],
  ['.nan', 0],
  ['.NaN', 0],
  ['12345678901234567890', 12345678901234567000],
  ['0.1234567890123456', 0.1234567890123456],
  [`0.${'0'.repeat(400)}1`, 0],
];

describe('what is written without quotes', () => {
  test.each(TABLE)('%j is read as %j', (source, value) => {
    const loaded = load(`value: ${source}\n`);
    expect(found(loaded)).toEqual([]);
    expect(loaded.data).toEqual({ value });
  });

  test.each(REFUSED)('%j is refused, since it can be read in more than one way', (source, value) => {
    const loaded = load(`value: ${source}\n`);
    expect(found(loaded)).toEqual(['1:8 scalar']);
    // The likely number stands in, so that a schema does not complain a second time about the same slip.
    expect(loaded.data).toEqual({ value });
  });
});

test.each([
  ['012', 'some readers take a leading zero for base eight'],
  ['5.', 'its decimals are missing'],
  ['03.25', 'its whole part has a leading zero'],
  ['0o14', 'it is in base eight'],
  ['0x1F', 'it is in base sixteen'],
  ['0b101', 'it is in base two'],
  ['1e5', 'it has an exponent'],
  ['1:30', 'some readers take the colon for base sixty'],
  ['-.INF', 'it stands for infinity'],
  ['.nan', 'it stands for "not a number"'],
])('of %s the message says that %s', (source, reason) => {
  expect(load(`value: ${source}\n`).diagnostics[0]?.message).toContain(reason);
});

test.each([...TABLE, ...REFUSED])('%j in quotes is text', (source) => {
  for (const quote of ['"', "'"]) {
    const loaded = load(`value: ${quote}${source}${quote}\n`);
    expect(found(loaded)).toEqual([]);
    expect(loaded.data).toEqual({ value: source });
  }
});

test('the digits as written are kept beside the number', () => {
  const { root } = load('value: 0.0020\nname: "0.0020"\n');
  const entries = root?.kind === 'map' ? root.entries : undefined;
  expect(entries?.get('value')?.node).toMatchObject({ value: 0.002, source: '0.0020', plain: true });
  expect(entries?.get('name')?.node).toMatchObject({ value: '0.0020', plain: false });
});

describe('a leading zero', () => {
  const shorthand =
    'readings:\n  - measure: main_bearing_bore\n    in: tenths\n    at: { 1: [05, +7], 2: 012 }\n';

  test('is a deviation in divisions of the gauge where a block of readings says so', () => {
    const loaded = load(shorthand);
    expect(found(loaded)).toEqual([]);
    expect(loaded.data).toMatchObject({ readings: [{ at: { 1: [5, 7], 2: 12 } }] });
  });

  test.each([
    ['in a block without in:', shorthand.replace('    in: tenths\n', ''), ['3:15 scalar', '3:27 scalar']],
    ['outside the readings', `${shorthand}hours: 010\n`, ['5:8 scalar']],
    [
      'in a list that is not the readings',
      shorthand.replace('readings', 'other'),
      ['4:15 scalar', '4:27 scalar'],
    ],
    [
      'in readings that are not at the top',
      `x:\n${shorthand.replace(/^/gm, ' ')}`,
      ['5:16 scalar', '5:28 scalar'],
    ],
  ])('%s is refused', (_where, text, expected) => {
    expect(found(load(text))).toEqual(expected);
  });
});
