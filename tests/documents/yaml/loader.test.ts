import { Ajv } from 'ajv';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { Composer } from 'yaml';
import { loadYaml } from '../../../src/documents/yaml/loader.ts';
import type { Node } from '../../../src/documents/yaml/node.ts';
import { found, load, marked, told } from '../load.ts';

const child = (node: Node | undefined, ...path: readonly (string | number)[]): Node | undefined =>
  path.reduce<Node | undefined>((at, step) => {
    if (at?.kind === 'list') return at.items[Number(step)];
    return at?.kind === 'map' ? at.entries.get(String(step))?.node : undefined;
  }, node);

describe('a sound document', () => {
  const text =
    'kind: session # a comment\nreadings:\n  - measure: bore\n    at:\n      1: [3.2507, 3.2511]\n\nnote: |\n  two\n  lines\n\nfolded: >\n  one\n  line\n\n';
  const { root, data, source, diagnostics } = load(text);
  const shown = (node: Node | undefined) => node && text.slice(node.span.start, node.span.end);

  test('comes as values and as nodes', () => {
    expect(diagnostics).toEqual([]);
    expect(data).toEqual({
      kind: 'session',
      readings: [{ measure: 'bore', at: { 1: [3.2507, 3.2511] } }],
      note: 'two\nlines\n',
      folded: 'one line\n',
    });
    expect(child(root, 'readings', 0, 'at', 1, 1)).toMatchObject({ value: 3.2511, source: '3.2511' });
  });

  test.each([
    [['kind'], 'session'],
    [['readings', 0, 'at', 1], '[3.2507, 3.2511]'],
    [['readings', 0, 'at', 1, 1], '3.2511'],
    [['readings', 0], 'measure: bore\n    at:\n      1: [3.2507, 3.2511]'],
    [['readings'], '- measure: bore\n    at:\n      1: [3.2507, 3.2511]'],
    [['note'], '|\n  two\n  lines'],
    [['folded'], '>\n  one\n  line'],
  ])('%j stands where its own words are', (path, expected) => {
    expect(shown(child(root, ...path))).toBe(expected);
  });

  test.each([
    ['a text', 'x: ab\n', { start: 3, end: 5 }, { value: 'ab', source: 'ab', plain: true }],
    ['a number', 'x: 0.20\n', { start: 3, end: 7 }, { value: 0.2, source: '0.20', plain: true }],
    [
      'a text in quotes',
      'x: "0.20"\n',
      { start: 3, end: 9 },
      { value: '0.20', source: '0.20', plain: false },
    ],
    ['nothing', 'x:\n', { start: 2, end: 2 }, { value: null, source: '', plain: true }],
    ['a key alone', '{ x }\n', { start: 3, end: 3 }, { value: null, source: '', plain: true }],
    ['an alias', 'x: *a\n', { start: 3, end: 5 }, { value: null, source: '', plain: true, refused: true }],
    [
      'a refused number',
      'x: 0x1\n',
      { start: 3, end: 6 },
      { value: 0, source: '0x1', plain: true, refused: true },
    ],
    [
      'a leading zero',
      'x: 05\n',
      { start: 3, end: 5 },
      { value: 5, source: '05', plain: true, leadingZero: true },
    ],
    [
      'an escaped control',
      'x: "\\e"\n',
      { start: 3, end: 7 },
      { value: '\x1b', source: '\x1b', plain: false, refused: true },
    ],
  ])('%s is a scalar with its place, and what the file says of it', (_what, written, span, wanted) => {
    expect(child(load(written).root, 'x')).toStrictEqual({ kind: 'scalar', span, ...wanted });
  });

  test('a file of nothing is a scalar of nothing at its start', () => {
    const nothing = { kind: 'scalar', span: { start: 0, end: 0 }, value: null, source: '', plain: true };
    expect(load('').root).toEqual(nothing);
  });

  test('a key that holds a control has no entry', () => {
    expect(load('"\\e": 1\na: 2\n').data).toEqual({ a: 2 });
  });

  test('keys have places too', () => {
    const readings = root?.kind === 'map' ? root.entries.get('readings') : undefined;
    expect(readings && source.place(readings.keySpan)).toMatchObject({ line: 2, column: 1, endColumn: 9 });
  });

  test.each([
    ['an empty file', ''],
    ['only a comment', '# nothing yet\n'],
    ['a byte order mark alone', '\ufeff'],
  ])('%s is nothing, and no problem here', (_what, empty) => {
    const loaded = load(empty);
    expect(loaded.diagnostics).toEqual([]);
    expect(loaded.data).toBeNull();
  });
});

describe('files as editors leave them', () => {
  test('with CRLF line ends, places and values are the same', () => {
    const loaded = load('kind: session\r\nnote: >\r\n  one\r\n  two\r\nhours: 012\r\n');
    expect(loaded.data).toMatchObject({ kind: 'session', note: 'one two\n' });
    expect(found(loaded)).toEqual(['5:8 scalar']);
  });

  test('with a byte order mark, columns on the first line are the same, and the mark is kept', () => {
    const loaded = load('\ufeffhours: 012\n');
    expect(loaded.data).toEqual({ hours: 12 });
    expect(found(loaded)).toEqual(['1:8 scalar']);
    expect(marked(loaded)).toEqual(['012']);
    expect(loaded.source.text).toBe('\ufeffhours: 012\n');
  });

  test('tabs inside a line and wide characters move no place', () => {
    const loaded = load('名前: [\t日本,\t0x1 ]\n"🔧": 0x2\n');
    expect(marked(loaded)).toEqual(['0x1', '0x2']);
  });

  test.each([
    ['UTF-16, little end first', Buffer.from('\ufeffkind: session', 'utf16le'), 'UTF-16'],
    ['UTF-16, big end first', Buffer.from('\ufeffkind: session', 'utf16le').swap16(), 'UTF-16'],
    ['UTF-16 without a mark', Buffer.from('kind: session', 'utf16le'), 'UTF-16'],
    ['UTF-16 without a mark, big end first', Buffer.from('kind: session', 'utf16le').swap16(), 'UTF-16'],
    ['Latin-1', Buffer.from('a: 1\nunit: \u00b5m\n', 'latin1'), '0xB5'],
    [
      'Latin-1 behind a replacement character',
      Buffer.from('a: \ufffd\nb: \u00b5', 'utf8').subarray(0, -1),
      '0xC2',
    ],
    ['a surrogate in bytes', Buffer.from([0x61, 0x3a, 0x20, 0xed, 0xa0, 0x80]), '0xED'],
  ])('%s is named, with its place', (_what, bytes, words) => {
    const loaded = loadYaml('a.yaml', bytes);
    expect(loaded.diagnostics).toHaveLength(1);
    expect(loaded.diagnostics[0]).toMatchObject({ code: 'document/encoding' });
    expect(loaded.diagnostics[0]?.message).toContain(words);
    expect(loaded.root).toBeUndefined();
  });

  test('the place of a byte that is not UTF-8 is right', () => {
    expect(found(loadYaml('a.yaml', Buffer.from('a: 1\nunit: \u00b5m\n', 'latin1')))).toEqual([
      '2:7 encoding',
    ]);
    const later = Buffer.concat([Buffer.from('a: \ufffd\nb: '), Buffer.from([0xb5])]);
    expect(found(loadYaml('a.yaml', later))).toEqual(['2:4 encoding']);
  });

  test('two hundred and fifty-six KiB are read, one byte more is not', () => {
    const full = `# ${'x'.repeat(256 * 1024 - 2)}`;
    expect(load(full).diagnostics).toEqual([]);
    expect(found(load(`${full}x`))).toEqual(['1:1 too-big']);
  });
});

describe('control characters', () => {
  test.each([
    ['NUL', 'a: x\0\n', ['1:5']],
    ['ESC', 'a: 1\nb: \x1b[31m\n', ['2:4']],
    ['DEL', 'a: \x7f\n', ['1:4']],
    ['C1', 'a: \x9b31m\n', ['1:4']],
    ['a line separator', 'a: x\u2028y\n', ['1:5']],
    ['a carriage return alone', 'a: x\ry\n', ['1:5']],
    ['a carriage return at the end', 'a: x\r', ['1:5']],
    ['a byte order mark inside', 'a: \ufeffx\n', ['1:4']],
    ['on two lines', 'a: \x01\x01\nb: \x01\n', ['1:4', '2:4']],
    ['in a key', '\x1bk: 1\n', ['1:1']],
    ['in a comment', 'a: 1 # \x1b\n', ['1:8']],
    ['escaped, ESC', 'a: "\\e[31m"\n', ['1:4']],
    ['escaped, NUL', 'a: "\\0"\n', ['1:4']],
    ['escaped, carriage return', 'a: "\\r"\n', ['1:4']],
    ['escaped, half of a pair', 'a: "\\ud800"\n', ['1:4']],
    ['escaped, in a key', '"\\e": 1\n', ['1:1']],
  ])('%s', (_what, text, places) => {
    expect(found(load(text))).toEqual(places.map((place) => `${place} control-character`));
  });

  test('a tab, a line end and a whole pair may be escaped', () => {
    expect(load('a: "\\t\\n\\ud83d\\udd27"\n').diagnostics).toEqual([]);
  });
});

describe('keys', () => {
  test.each([
    ['yes', 'yes: 1\n', ['1:1 key']],
    ['No', 'No: 1\n', ['1:1 key']],
    ['OFF', 'OFF: 1\n', ['1:1 key']],
    ['On', 'On: 1\n', ['1:1 key']],
    ['y', 'y: 1\n', ['1:1 key']],
    ['true', 'true: 1\n', ['1:1 key']],
    ['False', 'False: 1\n', ['1:1 key']],
    ['~', '~: 1\n', ['1:1 key']],
    ['nothing', ': 1\n', ['1:1 key']],
    ['a list', '? [a, b]\n: 1\n', ['1:3 key']],
    ['a mapping', '{ { a: 1 }: 2 }\n', ['1:3 key']],
    ['separate accents', 'cafe\u0301: 1\n', ['1:1 key']],
    ['__proto__', 'a:\n  __proto__: { x: 1 }\n', ['2:3 key']],
    ['constructor', 'constructor: { prototype: { x: 1 } }\n', ['1:1 key', '1:16 key']],
    ['prototype in quotes', '"prototype": 1\n', ['1:1 key']],
    ['an escaped __proto__', '"\\u005f_proto__": 1\n', ['1:1 key']],
    ['an alias', '? *a\n: 1\n', ['1:3 alias']],
  ])('%s is refused as a key', (_what, text, expected) => {
    expect(found(load(text))).toEqual(expected);
  });

  test.each([
    ['in quotes', '"yes": 1\n"no": 2\n', { yes: 1, no: 2 }],
    [
      'on, the key of work and of what was found',
      '- { work: honed, on: cylinder 3 }\n',
      [{ work: 'honed', on: 'cylinder 3' }],
    ],
    ['numbers, as text', 'at: { 1: a, 05: b, 1.5: c }\n', { at: { 1: 'a', '05': 'b', 1.5: 'c' } }],
    [
      'names of methods',
      'toString: 1\nvalueOf: 2\nhasOwnProperty: 3\n',
      { toString: 1, valueOf: 2, hasOwnProperty: 3 },
    ],
    ['the merge sign, which merges nothing', '<<: { a: 1 }\nb: 2\n', { '<<': { a: 1 }, b: 2 }],
  ])('%s is allowed', (_what, text, data) => {
    const loaded = load(text);
    expect(loaded.diagnostics).toEqual([]);
    expect(JSON.parse(JSON.stringify(loaded.data))).toEqual(data);
  });

  test.each([
    ['the same word', 'a: 1\nb: 2\na: 3\n', '3:1', 1],
    ['in quotes', 'a: 1\n"a": 2\n', '2:1', 1],
    ['escaped', 'a: 1\n"\\u0061": 2\n', '2:1', 1],
    ['a number and its text', '{ 1: a, "1": b }\n', '1:9', 1],
    ['true and its text', 'x:\n  "true": 1\n  \'true\': 2\n', '3:3', 2],
  ])('%s twice: the second is marked and the first named', (_what, text, place, line) => {
    const loaded = load(text);
    expect(found(loaded)).toEqual([`${place} duplicate-key`]);
    expect(loaded.diagnostics[0]?.message).toContain(`first on line ${line}`);
  });

  test('accents written in two ways make the same key', () => {
    expect(found(load('caf\u00e9: 1\ncafe\u0301: 2\n'))).toEqual(['2:1 key', '2:1 duplicate-key']);
  });
});

describe('what a prototype could be reached by', () => {
  afterEach(() => expect(({} as Record<string, unknown>).x).toBeUndefined());

  test.each(['__proto__', 'constructor', 'prototype', 'toString', 'valueOf'])('%s, at every level', (key) => {
    const { data } = load(`${key}: { x: 1 }\na:\n  ${key}: { x: 1 }\n  b: [{ ${key}: { x: 1 } }]\n`);
    const inner = (data as { a: { b: Record<string, unknown>[] } }).a;
    for (const map of [data, inner, inner.b[0]]) {
      expect(Object.getPrototypeOf(map)).toBeNull();
      expect((map as Record<string, unknown>).x).toBeUndefined();
    }
  });

  test('a schema sees no inherited names, and does see its own', () => {
    const validate = new Ajv({ ownProperties: true, strict: true }).compile({
      type: 'object',
      required: ['kind', 'valueOf'],
      additionalProperties: false,
      properties: { kind: { const: 'session' }, valueOf: { type: 'number' } },
    });
    expect(validate(load('kind: session\n').data)).toBe(false);
    expect(validate(load('kind: session\nvalueOf: 1\n').data)).toBe(true);
    expect(validate(load('kind: session\nvalueOf: 1\ntoString: 1\n').data)).toBe(false);
  });
});

describe('what YAML can do and these documents do not', () => {
  test.each([
    ['an anchor', 'a: &x 1\n', ['1:4 alias']],
    ['an anchor on a mapping', 'a: &x\n  b: 1\n', ['1:4 alias']],
    ['an anchor on a key', '&x a: 1\n', ['1:1 alias']],
    ['an alias', 'a: *x\n', ['1:4 alias']],
    ['a list within itself', 'a: &a [*a]\n', ['1:4 alias', '1:8 alias']],
    ['a known tag', 'a: !!str 1\n', ['1:4 tag']],
    ['an unknown tag', 'a: !foo [1]\n', ['1:4 tag']],
    ['a tag with an unknown handle', 'a: !e!x 1\n', ['1:4 tag']],
    ['a tag for code', 'a: !!js/function "x"\n', ['1:4 tag']],
    ['a lone tag', 'a: ! 1\n', ['1:4 tag']],
    [
      'tags on keys and in lists',
      '!!str a: [!!int 1, !!set { b: ~ }]\n',
      ['1:1 tag', '1:11 tag', '1:20 tag'],
    ],
    ['binary, timestamp', 'a: !!binary AA==\nb: !!timestamp 2026-02-03\n', ['1:4 tag', '2:4 tag']],
    ['another version', '%YAML 1.1\n---\na: no\n', ['1:1 directive']],
    ['an unknown version', '# x\n%YAML 1.3\n---\na: no\n', ['2:1 directive']],
    ['handles', '%TAG ! tag:x,2026:\n---\na: 1\n', ['1:1 directive']],
    ['an unknown directive', '%FOO bar\n---\na: 1\n', ['1:1 directive']],
    ['the version twice', '%YAML 1.2\n%YAML 1.2\n---\na: 1\n', ['2:1 directive']],
  ])('%s is refused', (_what, text, expected) => {
    expect(found(load(text))).toEqual(expected);
  });

  test('with another version asked for, words and numbers still mean the same', () => {
    const { data } = load('%YAML 1.1\n---\na: no\nb: 1_0\nc: 7\n');
    expect(data).toMatchObject({ a: 'no', c: 7 });
  });

  test('the version that is used anyway may be named', () => {
    expect(load('%YAML 1.2\n---\na: 1\n').diagnostics).toEqual([]);
  });

  test('a percent sign inside the document is no directive', () => {
    expect(load('a: |\n  x\n  %YAML 1.1\nb: 4 %\n').diagnostics).toEqual([]);
  });
});

describe('nesting', () => {
  const lists = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`;

  test('thirty-two deep is read, thirty-three is not', () => {
    expect(load(lists(32)).diagnostics).toEqual([]);
    expect(found(load(lists(33)))).toEqual(['1:33 depth']);
    expect(load(lists(33)).root).toBeUndefined();
  });
});

describe('what is changed for everyone while a text is parsed', () => {
  const before = Object.getOwnPropertyDescriptor(Error, 'stackTraceLimit');
  afterEach(() => {
    Object.defineProperty(Error, 'stackTraceLimit', before ?? {});
    vi.restoreAllMocks();
  });

  test('is that errors have no traces, which cost a third of the time; then it is as it was', () => {
    const limits: number[] = [];
    const set = (limit: number) => limits.push(limit);
    Object.defineProperty(Error, 'stackTraceLimit', { configurable: true, get: () => 7, set });
    load('a: ]\n');
    expect(limits).toEqual([0, 7]);
  });

  test('and is as it was where the parser itself breaks down, of which the file is told', () => {
    vi.spyOn(Composer.prototype, 'compose').mockImplementation(() => {
      throw new Error('a bug of the parser');
    });
    Error.stackTraceLimit = 7;
    const loaded = load('%FOO\na: 1\n');
    expect(Error.stackTraceLimit).toBe(7);
    expect(Object.keys(loaded)).toEqual(['source', 'diagnostics']);
    expect(told(loaded)).toEqual([
      '1:1-5 directive: a directive line (%) is not used here; leave the line out: documents are YAML 1.2',
      '1:1-1 yaml: the file cannot be read as YAML; compare it with a document that can be read',
    ]);
  });
});
