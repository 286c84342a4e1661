import { describe, expect, test } from 'vitest';
import { found, load, marked } from '../load.ts';

const readings = (at: string, more = ''): string => `readings:\n  - measure: bore\n${more}    at: ${at}\n`;

describe('a decimal comma in readings', () => {
  test.each([
    ['one reading that becomes two', '{ 1: [3,2478] }', ['3,2478']],
    ['two readings that become four', '{ 1: [3,2478, 3,2477] }', ['3,2478', '3,2477']],
    ['a comma beside readings with a point', '{ 1: [3.2478, 3,2477] }', ['3,2477']],
    ['decimals with a leading zero', '{ 1: [0,0025] }', ['0,0025']],
    ['a whole number beside readings with a point', '{ 1: [3.2478, 3] }', ['3']],
    ['a negative deviation', '{ 1: [-0,0007] }', ['-0,0007']],
    ['spread by an editor', '{ 1: [3, 2478] }', ['[3, 2478]']],
    ['in a row of a grid', '{ 1: [[3.2478, 3.2477], [3,2478]] }', ['3,2478']],
    ['as a single reading in braces', '{ 1: 3,2478, 2: 3.2477 }', ['3,2478']],
    ['with its unit, as a single reading in braces', '{ 1: 2,5 thou, 2: 3 thou }', ['2,5 thou']],
    ['in repeats', '{ 1: { repeat: [3,2478] } }', ['3,2478']],
  ])('%s', (_what, at, expected) => {
    const loaded = load(readings(at));
    expect(new Set(loaded.diagnostics.map(({ code }) => code))).toEqual(new Set(['document/decimal-comma']));
    expect(marked(loaded)).toEqual(expected);
  });

  test('in limits, where the decimals become a key', () => {
    const loaded = load('limits:\n  taper: { wear: { min: 0,0020, max: 0,0038 } }\n');
    expect(found(loaded)).toEqual(['2:25 decimal-comma', '2:38 decimal-comma']);
    expect(loaded.diagnostics[0]?.help).toContain('0.0020');
  });
});

describe('no alarm for', () => {
  test.each([
    ['readings with points, however close', readings('{ 1: [3.2478,3.2477] }')],
    ['whole readings with a space', readings('{ 1: [120, 125], 2: [95, 102] }')],
    ['whole readings in micrometres', readings('{ 1: [82495, 82497] }')],
    ['readings that did not move', readings('{ 1: [0, 0] }')],
    ['readings one below the other', readings('\n      1:\n        - 0.1\n        - 0.2')],
    ['divisions of a gauge', readings('{ 1: [+7,05], 2: [7, 7.5], 3: [1, 500] }', '    in: tenths\n')],
    ['positions in close order', 'order: [1,2]\nreadings:\n  - measure: runout\n    supported_on: [1,5]\n'],
    ['lists that are not readings', 'order: [1, 200]\nlayout: { mains: [1,2,3], pins: { 1: [1,5] } }\n'],
    ['names without a value', 'set: { front, rear }\n'],
    ['a position whose name begins with its number', readings('{ 1: 3, 1L: , 2: 4 }')],
    ['a position that was not taken', readings('{ 1: 3.2478, 2: , 3: ~ }')],
  ])('%s', (_what, text) => {
    expect(found(load(text))).toEqual([]);
  });
});
