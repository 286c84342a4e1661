import { describe, expect, test } from 'vitest';
import { controlCharacters, decode } from '../../../src/documents/yaml/bytes.ts';

const read = (bytes: readonly number[] | Uint8Array) => {
  const { source, problem } = decode('a.yaml', Uint8Array.from(bytes));
  return problem === undefined ? source.text : problem;
};

const utf16 = {
  code: 'encoding',
  span: { start: 0, end: 0 },
  message: 'the file is in UTF-16, not in UTF-8',
  help: 'save it as UTF-8',
};

describe('a file in UTF-16', () => {
  test.each([
    ['by its mark, little end first', [0xff, 0xfe, 0x61, 0x00]],
    ['by its mark, big end first', [0xfe, 0xff, 0x00, 0x61]],
    ['by its mark alone', [0xff, 0xfe]],
    ['by the other mark alone', [0xfe, 0xff]],
  ])('is known %s, and none of it is kept', (_, bytes) => {
    expect(decode('a.yaml', Uint8Array.from(bytes))).toMatchObject({ source: { text: '' }, problem: utf16 });
  });

  test('is known without a mark by the zeros beside both of its first letters, and by nothing else', () => {
    const patterns = Array.from({ length: 16 }, (_, bits) => [8, 4, 2, 1].map((bit) => (bits & bit ? 1 : 0)));
    const known = patterns.filter((bytes) => typeof read(bytes) === 'object').map((bytes) => bytes.join(''));
    expect(known).toEqual(['0101', '1010']);
    for (const bytes of patterns.filter((each) => !known.includes(each.join(''))))
      expect(read(bytes)).toBe(String.fromCharCode(...bytes));
  });
});

describe('a byte that is not UTF-8', () => {
  const damage = (byte: string, start: number) => ({
    code: 'encoding',
    span: { start, end: start + 1 },
    message: `the byte 0x${byte} here is not UTF-8; the file may be in Latin-1 or Windows-1252`,
    help: 'save it as UTF-8',
  });
  const utf8 = (text: string): number[] => [...Buffer.from(text)];

  test.each([
    ['at the start', [0xb5], damage('B5', 0)],
    ['that begins as a mark of UTF-16 does', [0xff, 0x61], damage('FF', 0)],
    ['that begins as the other mark does', [0xfe, 0x61], damage('FE', 0)],
    ['that ends as that mark does', [0x61, 0xff, 0x62], damage('FF', 1)],
    ['behind letters of two and of three bytes', [...utf8('µ日: '), 0xb5, 0x61], damage('B5', 4)],
    [
      'behind replacement characters of the file itself',
      [...utf8('\ufffdµ\ufffd\ufffdx'), 0x80],
      damage('80', 5),
    ],
    ['before one', [0xe4, ...utf8('\ufffd')], damage('E4', 0)],
    ['that begins a replacement character', [...utf8('ab'), 0xef, 0x41], damage('EF', 2)],
    ['that begins two thirds of one', [...utf8('ab'), 0xef, 0xbf, 0x41], damage('EF', 2)],
    ['that begins another character of three', [...utf8('ab'), 0xef, 0x41, 0xbd], damage('EF', 2)],
  ])('%s is named, with its place', (_, bytes, wanted) => {
    expect(read(bytes)).toEqual(wanted);
  });

  test('leaves the rest of the text readable, so that its line can be shown', () => {
    expect(decode('a.yaml', Uint8Array.from([0x61, 0xb5, 0x62])).source).toMatchObject({
      path: 'a.yaml',
      text: 'a\ufffdb',
    });
  });
});

describe('the size of a file', () => {
  const filled = (size: number) => new Uint8Array(size).fill(0x20);

  test('is at most 256 KiB', () => {
    expect(read(filled(256 * 1024))).toHaveLength(256 * 1024);
    const big = decode('a.yaml', filled(256 * 1024 + 1));
    expect(big.source.text).toBe('');
    expect(big.problem).toEqual({
      code: 'too-big',
      span: { start: 0, end: 0 },
      message: 'the file has 257 KiB; at most 256 KiB are read',
      help: 'split it: one file a session',
    });
  });

  test('is asked before its encoding', () => {
    const bytes = filled(256 * 1024 + 1);
    bytes[0] = 0xb5;
    expect(read(bytes)).toMatchObject({ code: 'too-big' });
  });
});

test('a mark, tabs, line ends and letters of any script are no control characters', () => {
  expect(controlCharacters('\ufeffa:\tµ日🔧\r\nb: é\n')).toEqual([]);
});
