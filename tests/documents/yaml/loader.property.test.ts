import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Loaded, loadYaml } from '../../../src/documents/yaml/loader.ts';
import type { Node, Span } from '../../../src/documents/yaml/node.ts';
import { runs } from '../../propertyRuns.ts';
import { load } from '../load.ts';
import { anyText, LIMITS, mutated, SESSION } from './anyText.ts';

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
