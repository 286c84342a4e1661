import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  appendItem,
  insertEntry,
  replaceScalar,
  type SpliceResult,
} from '../../../src/documents/writing/splice.ts';
import { runs } from '../../propertyRuns.ts';

const text = (result: SpliceResult): string => (result.ok ? result.value.text : result.problem.reason);

const READING = 'measure: cylinder_bore\nat:\n  1: 4.1250';

describe('a reading added to a session', () => {
  it.each([
    [
      'goes below the last one, at its indentation',
      'readings:\n  - measure: a\n    at: { 1: 3.2400 }   # front\n\ntightened: []\n',
      'readings:\n  - measure: a\n    at: { 1: 3.2400 }   # front\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\n\ntightened: []\n',
    ],
    [
      'keeps a list that is not indented',
      'readings:\n- measure: a\n# end\n',
      'readings:\n- measure: a\n- measure: cylinder_bore\n  at:\n    1: 4.1250\n# end\n',
    ],
    [
      'keeps a wide gap behind the dash',
      'readings:\n  -   measure: a\n',
      'readings:\n  -   measure: a\n  -   measure: cylinder_bore\n      at:\n        1: 4.1250\n',
    ],
    [
      'keeps comments with the reading they belong to',
      'readings:\n  - measure: a\n    # shells in\n  # all taken\n',
      'readings:\n  - measure: a\n    # shells in\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\n  # all taken\n',
    ],
    [
      'keeps line ends and the mark at the start of a file from another system',
      '\uFEFFreadings:\r\n  - measure: a\r\n',
      '\uFEFFreadings:\r\n  - measure: a\r\n  - measure: cylinder_bore\r\n    at:\r\n      1: 4.1250\r\n',
    ],
    [
      'keeps a last line without a line break',
      'readings:\n  - measure: a',
      'readings:\n  - measure: a\n  - measure: cylinder_bore\n    at:\n      1: 4.1250',
    ],
    [
      'goes behind a note of several lines and does not lengthen it',
      'readings:\n  - note: |+\n      worn\n\n\nhours: 3\n',
      'readings:\n  - note: |+\n      worn\n\n\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\nhours: 3\n',
    ],
    [
      'goes behind a folded note',
      'readings:\n  - note: worn at\n      the front\n',
      'readings:\n  - note: worn at\n      the front\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\n',
    ],
    [
      'makes a block of an empty list, whose comment stays',
      'readings: []   # none yet\nhours: 3\n',
      'readings:    # none yet\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\nhours: 3\n',
    ],
    [
      'makes a block of an empty list without a comment, and leaves no space at the end of its line',
      'readings: []\n',
      'readings:\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\n',
    ],
    [
      'goes below a key without a value, behind the hints there',
      'readings:   # by RK\n  # - measure: …\nhours: 3\n',
      'readings:   # by RK\n  # - measure: …\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\nhours: 3\n',
    ],
    [
      'goes before the end mark of the document',
      '---\nreadings:\n  - measure: a\n...\n',
      '---\nreadings:\n  - measure: a\n  - measure: cylinder_bore\n    at:\n      1: 4.1250\n...\n',
    ],
  ])('%s', (_, before, after) => {
    expect(text(appendItem(before, ['readings'], READING))).toBe(after);
  });

  it.each([
    ['the file is no YAML', 'readings: [', READING, 'document'],
    ['the file holds an anchor', 'readings: &a\n  - measure: a\n', READING, 'document'],
    ['the file holds a tag', 'readings: !!seq\n  - measure: a\n', READING, 'document'],
    ['the file is two documents', 'readings: []\n---\na: 1\n', READING, 'document'],
    ['the file is empty', '', READING, 'document'],
    ['the reading is no YAML', 'readings: []\n', 'measure: [', 'text'],
    ['the session has no readings', 'kind: session\n', READING, 'place'],
    ['the readings are a text', 'readings: none\n', READING, 'layout'],
    ['the readings are a map', 'readings: { a: 1 }\n', READING, 'layout'],
    ['a list within brackets would have to be broken up', 'readings: [{ measure: a }]\n', READING, 'layout'],
  ])('is refused when %s', (_, before, item, reason) => {
    expect(appendItem(before, ['readings'], item)).toMatchObject({ ok: false, problem: { reason } });
  });
});

describe('a value added to a list within brackets', () => {
  it.each([
    ['stands behind the last one', 'at: [3.2478, 3.2477]\n', 'at: [3.2478, 3.2477, 3.2400]\n'],
    ['keeps the spaces inside', 'at: [ 3.2478 ] # c\n', 'at: [ 3.2478, 3.2400 ] # c\n'],
    [
      'uses a comma that is there',
      'at: [3.2478,\n  3.2477,  # b\n]\n',
      'at: [3.2478,\n  3.2477, 3.2400  # b\n]\n',
    ],
    ['may be the first', '{ at: [] }\n', '{ at: [3.2400] }\n'],
  ])('%s', (_, before, after) => {
    expect(text(appendItem(before, ['at'], '3.2400'))).toBe(after);
  });
});

describe('a position added to a block of readings', () => {
  const path = ['readings', 0, 'at'];
  it.each([
    ['in braces', '{ 1: 3.2478 }', '{ 1: 3.2478, 2: 3.2400 }'],
    ['in tight braces', '{1: 3.2478}', '{1: 3.2478, 2: 3.2400}'],
    [
      'in braces over two lines',
      '{ 1: 3.2478,   # a\n      3: 3.2477 }',
      '{ 1: 3.2478,   # a\n      3: 3.2477, 2: 3.2400 }',
    ],
    [
      'in braces with a grid',
      '{ 1: [[1.0, 2.0], [3.0, 4.0]] }',
      '{ 1: [[1.0, 2.0], [3.0, 4.0]], 2: 3.2400 }',
    ],
    ['in empty braces', '{}', '{ 2: 3.2400 }'],
    ['line by line', '\n      1: 3.2478   # front', '\n      1: 3.2478   # front\n      2: 3.2400'],
    [
      'line by line with a note',
      '\n      1: { value: 3.2478, note: worn }',
      '\n      1: { value: 3.2478, note: worn }\n      2: 3.2400',
    ],
    ['below nothing', ' # along the shaft', ' # along the shaft\n      2: 3.2400'],
  ])('%s', (_, before, after) => {
    const frame = (at: string) =>
      `readings:\n  - measure: a\n    at: ${at}\n    with: m\n`.replace('at: \n', 'at:\n');
    expect(text(insertEntry(frame(before), path, '2', '3.2400'))).toBe(frame(after));
  });

  it('is refused when it is there already', () => {
    const result = insertEntry('at: { 1: 3.2478 }\n', ['at'], '1', '3.2');
    expect(result).toMatchObject({ problem: { reason: 'exists' } });
  });

  it.each([
    ['piston 1', 'piston 1: 2.1'],
    ['+45', '+45: 2.1'],
    ['5L', '5L: 2.1'],
    ['on', '"on": 2.1'],
    ['a: b', '"a: b": 2.1'],
    ['# no comment', '"# no comment": 2.1'],
    ['', '"": 2.1'],
  ])('named %j is written %s', (key, line) => {
    expect(text(insertEntry('at:\n  1: 2\n', ['at'], key, '2.1'))).toBe(`at:\n  1: 2\n  ${line}\n`);
  });

  it('may be a block of its own', () => {
    const result = insertEntry('kind: session\nhours: 3\n', [], 'readings', '- measure: a\n  at: { 1: 2.0 }');
    expect(text(result)).toBe('kind: session\nhours: 3\nreadings:\n  - measure: a\n    at: { 1: 2.0 }\n');
  });

  it('may be the first in a file that starts with a byte order mark', () => {
    expect(text(insertEntry('\uFEFFkind: session', [], 'by', 'RK'))).toBe('\uFEFFkind: session\nby: RK');
  });
});

describe('a reading replaced', () => {
  it.each([
    ['by other digits', 'at: { 1: 3.2478 } # c\n', '3.2480', 'at: { 1: 3.2480 } # c\n'],
    ['by fewer digits', 'at:\n  1: 3.2478   # c\n', '3.24', 'at:\n  1: 3.24   # c\n'],
    [
      'by one that tells what was there',
      'at: { 1: 2.8374 }\n',
      '{ value: 2.8734, was: 2.8374, why: misread }',
      'at: { 1: { value: 2.8734, was: 2.8374, why: misread } }\n',
    ],
    ['where it was not taken', 'at: { 1: ~ }\n', '3.2480', 'at: { 1: 3.2480 }\n'],
    ['where nothing stands', 'at:\n  1:\n  2: 3\n', '3.2480', 'at:\n  1: 3.2480\n  2: 3\n'],
    ['where only a comment stands', 'at:\n  1: # later\n', '3.2480', 'at:\n  1: 3.2480 # later\n'],
    ['where quotes stand', "at:\n  1: '3.2478'\n", '3.2478', 'at:\n  1: 3.2478\n'],
  ])('%s', (_, before, replacement, after) => {
    expect(text(replaceScalar(before, ['at', '1'], replacement))).toBe(after);
  });

  it.each([
    ['by what would be read as two entries', 'at: { 1: 3.2 }\n', '3, 2: 4', 'layout'],
    ['by what would swallow a comment', 'at: { 1: 3.2 }\n', '3 # c', 'layout'],
    ['by a block', 'at: { 1: 3.2 }\n', 'a: 1\nb: 2', 'layout'],
    ['where a list stands', 'at: { 1: [3] }\n', '3', 'layout'],
    ['where a block of text stands', 'at:\n  1: |\n    x\n', '3', 'layout'],
    ['where nothing is', 'at: { 2: 3 }\n', '3', 'place'],
  ])('%s is refused', (_, before, replacement, reason) => {
    const result = replaceScalar(before, ['at', '1'], replacement);
    expect(result).toMatchObject({ ok: false, problem: { reason } });
  });
});

const inch = fc.integer({ min: 1, max: 999_999 }).map((n) => (n / 10_000).toFixed(4));
const comment = fc.constantFrom('', '', '   # front', ' # µm, not thou', ' #');
const own = fc.constantFrom('', '', '# a line of its own\n', '\n', '    # indented\n');

const at = fc.oneof(
  fc.tuple(inch, inch).map(([a, b]) => `at: { 1: ${a}, 2: [${b}, ${a}] }`),
  fc
    .tuple(inch, comment, inch)
    .map(([a, c, b]) => `at:${c}\n      1: ${a}${c}\n      piston 2: { value: ${b}, note: "worn: 'é'" }`),
  fc.tuple(inch).map(([a]) => `at:\n      5: [[${a}, ~],\n          [${a}, ${a}]]`),
  inch.map((a) => `value: +${a}`),
);

const last = fc.constantFrom(
  '',
  '',
  'note: |\n      two\n\n      lines',
  'note: >-\n      folded\n      text',
  'by:',
  'note: plain text\n      goes on',
);

const reading = fc.tuple(own, comment, at, comment, last).map(([line, c, values, d, note]) => {
  const ending = note === '' ? '' : `\n    ${note}`;
  return `${line}  - measure: main_bearing_bore${c}\n    ${values}${/[\]}\d]$/.test(values) ? d : ''}${ending}\n`;
});

const before = fc.constantFrom(
  'kind: session\n',
  '# yaml-language-server: $schema=x\nkind: session  # one sitting\n\n',
  '---\nkind: session\n',
);
const after = fc.constantFrom(
  '',
  '\n\n# the end\n',
  'tightened: []\n',
  '\nconcessions:\n  - { at: 3 }\n',
  '...\n',
);

/** Sessions as people write them: comments, empty lines, both styles, both line ends, with and without a mark. */
const session = fc
  .record({
    before,
    first: fc.constantFrom('readings:\n', 'readings:   # in order\n'),
    readings: fc.array(reading, { minLength: 1, maxLength: 4 }),
    after,
    outdented: fc.boolean(),
    crlf: fc.boolean(),
    mark: fc.boolean(),
    open: fc.boolean(),
  })
  .map((s) => {
    const list = s.readings.join('');
    const lines = s.before + s.first + (s.outdented ? list.replace(/^ {2}/gm, '') : list) + s.after;
    const ended = s.open ? lines.replace(/\n+$/, '') : lines;
    return (s.mark ? '\uFEFF' : '') + (s.crlf ? ended.replace(/\n/g, '\r\n') : ended);
  });

const added = fc.tuple(inch, inch, fc.boolean()).map(([a, b, flow]) => ({
  item: flow
    ? `measure: cylinder_bore\nat: { 1: ${a}, 2: ${b} }`
    : `measure: cylinder_bore\nat:\n  1: ${a}\n  2: ${b}`,
  digits: [a, b],
}));

const RUNS = runs(20_000, 150);

describe('of readings added to any session', () => {
  it(`no byte outside the insertion changes (${RUNS.numRuns} sessions)`, () => {
    fc.assert(
      fc.property(session, added, (old, { item, digits }) => {
        const result = appendItem(old, ['readings'], item);
        if (!result.ok) throw new Error(result.problem.message);
        const { text: now, start, removed, inserted } = result.value;
        expect(removed).toBe('');
        const without = now.slice(0, start) + now.slice(start + inserted.length);
        expect(Buffer.from(without).equals(Buffer.from(old))).toBe(true);
        for (const number of digits)
          expect(inserted).toMatch(new RegExp(`: ${number.replace('.', '\\.')}\\b`));
        if (old.includes('\r\n')) expect(inserted).not.toMatch(/[^\r]\n/);
        else expect(inserted).not.toContain('\r');
        const [was, is] = [parse(old), parse(now)];
        expect(is).toEqual({ ...was, readings: [...was.readings, parse(item)] });
      }),
      RUNS,
    );
  });
});
