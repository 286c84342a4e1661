import { isMap, isScalar, isSeq, LineCounter, type Node as Parsed, parseDocument, type Scalar } from 'yaml';
import type { Entry, Node, SourceText, Span } from '../../src/documents/yaml/node.ts';

/** A sound document as values and as places, by the shortest way; what is refused on reading is tested elsewhere. */
export function readYaml(text: string): { data: unknown; root: Node; source: SourceText } {
  const lines = new LineCounter();
  const parsed = parseDocument(text, { schema: 'core', stringKeys: true, lineCounter: lines });
  const [problem] = parsed.errors;
  if (problem !== undefined) throw problem;
  return { data: parsed.toJS(), root: nodeOf(parsed.contents), source: sourceOf(text, lines) };
}

function sourceOf(text: string, lines: LineCounter): SourceText {
  const at = (offset: number) => lines.linePos(offset);
  return {
    path: 'document.yaml',
    text,
    place: ({ start, end }) => ({
      path: 'document.yaml',
      line: at(start).line,
      column: at(start).col,
      endLine: at(end).line,
      endColumn: at(end).col,
    }),
  };
}

function nodeOf(parsed: Parsed | null): Node {
  const span = spanOf(parsed);
  if (isSeq<Parsed>(parsed)) return { kind: 'list', span, items: parsed.items.map(nodeOf) };
  if (!isMap<Scalar<string>, Parsed | null>(parsed)) return scalarOf(parsed, span);
  const entries = parsed.items.map(({ key, value }): [string, Entry] => [
    key.value,
    { key: key.value, keySpan: spanOf(key), node: nodeOf(value) },
  ]);
  return { kind: 'map', span, entries: new Map(entries) };
}

function scalarOf(parsed: Parsed | null, span: Span): Node {
  if (!isScalar(parsed)) return { kind: 'scalar', span, value: null, source: '', plain: true };
  const value = parsed.value as string | number | boolean | null;
  return { kind: 'scalar', span, value, source: parsed.source ?? '', plain: parsed.type === 'PLAIN' };
}

function spanOf(parsed: Parsed | null): Span {
  const [start, end] = parsed?.range ?? [0, 0];
  return { start, end };
}
