import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Loaded, loadYaml } from '../../../src/documents/yaml/loader.ts';
import type { Node, Span } from '../../../src/documents/yaml/node.ts';
import { runs } from '../../propertyRuns.ts';
import { load } from '../load.ts';

const SESSION = `# yaml-language-server: $schema=../../../schemas/session.json
kind: session
stage: teardown
date: 2026-02-03
temperature: 64 degF
readings:
  - measure: main_journal_diameter
    with: mic-3-4
    stations: [front, rear]
    at:
      1: [[3.2478, 3.2477], [3.2477, 3.2477]]
      2: 3.2475   # a single reading
  - { measure: main_bearing_bore, in: tenths, set_to: 3.2500, at: { 1: +7, 2: 05 } }
  - measure: main_bearing_clearance
    conditions: { bearings: dry, oil_pump: off }
    at: { 5: { value: 0.0045, note: "stayed on the \\"shell\\"" } }
concessions:
  - measure: cylinder_taper
    reason: >
      Standby engine; owner agreed
      to run it.
`;
const LIMITS = `kind: limits
source: 'Invented for this example. Use the engine maker''s manual.'
limits:
  main_bearing_clearance:
    target: { min: 0.0026, max: 0.0032 }
    at: { 5: { target: { min: 0.0028, max: 0.0036 } } }
  turning_torque: { new: { max: 9 lbf ft } }
  cylinder_taper: { wear: { max: { formula: "0.0005 * bore" } } }
`;

const TOKENS = [
  ...[
    '- ',
    '? ',
    ': ',
    ', ',
    '[',
    ']',
    '{',
    '}',
    '\n',
    '\n  ',
    '\n    ',
    '\t',
    '\r\n',
    '\r',
    ' ',
    '#',
    ' # x',
    '---\n',
    '...\n',
  ],
  ...[
    '&a',
    '*a',
    '!t ',
    '!!str ',
    '%YAML 1.1\n',
    '%',
    '|',
    '>',
    '|2-\n',
    '"',
    "'",
    '\\',
    '"\\x"',
    '@',
    '`',
    '<<',
    '__proto__',
  ],
  ...[
    'readings:',
    'in: ',
    'at: ',
    '1',
    '05',
    '3,2478',
    '.5',
    '5.',
    '1_0',
    '1:30',
    '0x1',
    'yes',
    'null',
    'a',
    'b: ',
    'é',
    '\ufeff',
  ],
  ...['\0', '\x1b', '\u2028', '\ud800', '日本', '🔧', 'e\u0301'],
];

const soup = fc.array(fc.constantFrom(...TOKENS), { maxLength: 60 }).map((tokens) => tokens.join(''));

/** A sound document with a few cuts, insertions and doublings. */
const mutated = fc
  .tuple(
    fc.constantFrom(SESSION, LIMITS),
    fc.array(fc.tuple(fc.nat(), fc.nat(40), fc.constantFrom('', 'twice', ...TOKENS)), {
      minLength: 1,
      maxLength: 4,
    }),
  )
  .map(([text, edits]) => edits.reduce(edit, text));

function edit(text: string, [position, length, what]: [number, number, string]): string {
  const start = position % (text.length + 1);
  const cut = text.slice(start, start + length);
  return text.slice(0, start) + (what === 'twice' ? cut + cut : what) + text.slice(start + length);
}

const anyText = fc.oneof(fc.string({ unit: 'binary', maxLength: 80 }), soup, mutated);

function spans(node: Node): Span[] {
  if (node.kind === 'scalar') return [node.span];
  if (node.kind === 'list') return [node.span, ...node.items.flatMap(spans)];
  return [node.span, ...[...node.entries.values()].flatMap((entry) => [entry.keySpan, ...spans(entry.node)])];
}

function plain(node: Node): unknown {
  if (node.kind === 'scalar') return node.value;
  if (node.kind === 'list') return node.items.map(plain);
  return Object.fromEntries([...node.entries].map(([key, entry]) => [key, plain(entry.node)]));
}

/** Lines and columns of a loaded file's text, as an editor counts them. */
function isInside({ source }: Loaded, line: number, column: number): boolean {
  const lines = source.text.replace(/^\ufeff/, '').split('\n');
  return line >= 1 && column >= 1 && line <= lines.length && column <= (lines[line - 1] ?? '').length + 1;
}

describe('whatever a file holds', () => {
  test('loading any text never throws, and gives either a document or a reason', () => {
    const property = fc.property(anyText, (text) => {
      const loaded = load(text);
      expect(loaded.root !== undefined || loaded.diagnostics.length > 0).toBe(true);
      expect(loaded.root === undefined).toBe(loaded.data === undefined);
    });
    fc.assert(property, runs(4000));
  });

  test('loading any bytes never throws', () => {
    const property = fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
      const loaded = loadYaml('any.yaml', bytes);
      expect(loaded.root !== undefined || loaded.diagnostics.length > 0).toBe(true);
    });
    fc.assert(property, runs(2000));
  });

  test('every place lies inside the file, and in its order', () => {
    const property = fc.property(anyText, (text) => {
      const loaded = load(text);
      const all = loaded.root === undefined ? [] : spans(loaded.root).map(loaded.source.place);
      for (const place of [...all, ...loaded.diagnostics.map((each) => each.place)]) {
        expect(isInside(loaded, place.line, place.column)).toBe(true);
        expect(isInside(loaded, place.endLine, place.endColumn)).toBe(true);
        expect(place.endLine - place.line || place.endColumn - place.column).toBeGreaterThanOrEqual(0);
      }
    });
    fc.assert(property, runs(3000));
  });

  test('the plain values say the same as the nodes', () => {
    const property = fc.property(anyText, (text) => {
      const { root, data } = load(text);
      if (root !== undefined) expect(JSON.stringify(data)).toBe(JSON.stringify(plain(root)));
    });
    fc.assert(property, runs(2000));
  });

  test('no message repeats a control character, and nothing reaches the prototype of all objects', () => {
    const property = fc.property(anyText, (text) => {
      for (const { message, help } of load(text).diagnostics) {
        expect(`${message}${help}`).not.toMatch(/[\x00-\x1f\x7f-\x9f\u2028\u2029]|\p{Cs}/u);
      }
    });
    const before = Object.getOwnPropertyNames(Object.prototype);
    fc.assert(property, runs(2000));
    expect(Object.getOwnPropertyNames(Object.prototype)).toEqual(before);
  });
});

test('the two documents that are cut up here are sound', () => {
  for (const text of [SESSION, LIMITS]) expect(load(text).diagnostics).toEqual([]);
});

test('a document with CRLF line ends has the same values and lines', () => {
  const property = fc.property(mutated, (text) => {
    const unix = text.replaceAll('\r', '');
    const [a, b] = [load(unix), load(unix.replaceAll('\n', '\r\n'))];
    expect(b.diagnostics.map(({ code, place }) => `${code} ${place.line}`)).toEqual(
      a.diagnostics.map(({ code, place }) => `${code} ${place.line}`),
    );
    expect(JSON.stringify(b.data)).toBe(JSON.stringify(a.data));
  });
  fc.assert(property, runs(1000));
});
