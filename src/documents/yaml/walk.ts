import { isAlias, isMap, isScalar, isSeq, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { MOST_DEPTH, tooDeep } from './nesting.ts';
import { type Entry, type Node, parsedSpan, type ScalarNode, type SourceText, type Span } from './node.ts';
import type { Report } from './problem.ts';
import { refuseAlias, refuseProperties } from './properties.ts';
import { readKey } from './readKey.ts';
import { readScalar } from './readScalar.ts';

/** Values, the lists and maps included. */
export const MOST_NODES = 50_000;

/** A document as nodes with their places and, built beside them, as plain values for a schema to look at. */
export interface Walked {
  readonly root: Node;
  /** Maps have no prototype: they inherit nothing, and no key can reach one. */
  readonly data: unknown;
  /** Numbers such as `05`, to be judged when their surroundings are known. */
  readonly leadingZeros: readonly ScalarNode[];
  /** False when the walk gave up on a part, so that the tree is not the whole document. */
  readonly complete: boolean;
}

interface Walk {
  readonly source: SourceText;
  readonly report: Report;
  readonly frames: Frame[];
  readonly leadingZeros: ScalarNode[];
  nodes: number;
  complete: boolean;
}

interface FrameBase {
  readonly span: { readonly start: number; end: number };
  /** In brackets, so that its end is where it says. */
  readonly flow: boolean;
  next: number;
}

export interface MapFrame extends FrameBase {
  readonly kind: 'map';
  readonly from: readonly Pair[];
  readonly entries: Map<string, Entry>;
  readonly data: Record<string, unknown>;
  last: Pick<Entry, 'keySpan' | 'node'> | undefined;
}

interface ListFrame extends FrameBase {
  readonly kind: 'list';
  readonly from: readonly unknown[];
  readonly items: Node[];
  readonly data: unknown[];
}

/** A collection whose children are still to come. */
type Frame = MapFrame | ListFrame;

/** One pass with a stack of its own, so that no nesting can exhaust the program's. */
export function walk(contents: unknown, source: SourceText, report: Report): Walked {
  const state: Walk = { source, report, frames: [], leadingZeros: [], nodes: 0, complete: true };
  const root = visit(state, contents, 0);
  const data = dataOf(state, root);
  for (let frame = state.frames.at(-1); frame !== undefined; frame = state.frames.at(-1)) {
    if (state.nodes > MOST_NODES) return { ...tooMany(state, frame), root, data };
    step(state, frame);
  }
  return { root, data, leadingZeros: state.leadingZeros, complete: state.complete };
}

function step(state: Walk, frame: Frame): void {
  const index = frame.next++;
  if (index >= frame.from.length) close(state, frame);
  else if (frame.kind === 'list') addItem(state, frame, frame.from[index]);
  else addEntry(state, frame, frame.from[index] as Pair);
}

function addItem(state: Walk, frame: ListFrame, parsed: unknown): void {
  const node = visit(state, parsed, frame.span.start);
  frame.items.push(node);
  frame.data.push(dataOf(state, node));
}

/** An entry whose key cannot stand is left out, but its value is looked at all the same. */
function addEntry(state: Walk, frame: MapFrame, pair: Pair): void {
  const { keySpan, key } = readKey(pair, frame, state.source, state.report);
  const node = visit(state, pair.value, keySpan.end);
  frame.last = { keySpan, node };
  if (key === undefined) return;
  frame.entries.set(key, { key, keySpan, node });
  frame.data[key] = dataOf(state, node);
}

/** A collection just met is on top of the stack, with the plain values that will be filled in. */
function dataOf(state: Walk, node: Node): unknown {
  return node.kind === 'scalar' ? node.value : state.frames.at(-1)?.data;
}

/** To the parser a block ends where the next line begins; to people, after its last word. */
function close(state: Walk, frame: Frame): void {
  state.frames.pop();
  if (frame.flow) return;
  const last = frame.kind === 'list' ? frame.items.at(-1) : frame.last?.node;
  frame.span.end = (last ?? frame).span.end;
}

function visit(state: Walk, parsed: unknown, at: number): Node {
  state.nodes += 1;
  if (isScalar(parsed)) {
    const scalar = readScalar(parsed, state.source.text, state.report);
    if (scalar.leadingZero) state.leadingZeros.push(scalar);
    return scalar;
  }
  if (isMap(parsed) || isSeq(parsed)) return open(state, parsed);
  if (isAlias(parsed)) return { ...nothing(refuseAlias(parsed, state.report)), refused: true };
  // A key in brackets may have no value at all: `{ front }`.
  return nothing({ start: at, end: at });
}

function open(state: Walk, parsed: YAMLMap | YAMLSeq): Node {
  const span = parsedSpan(parsed);
  refuseProperties(parsed, span, state.source.text, state.report);
  if (state.frames.length >= MOST_DEPTH) return passOver(state, span);
  const flow = parsed.flow === true;
  if (isSeq(parsed)) {
    const items: Node[] = [];
    state.frames.push({ kind: 'list', from: parsed.items, span, flow, items, data: [], next: 0 });
    return { kind: 'list', span, items };
  }
  const entries = new Map<string, Entry>();
  const data: Record<string, unknown> = Object.create(null);
  state.frames.push({ kind: 'map', from: parsed.items, span, flow, entries, data, last: undefined, next: 0 });
  return { kind: 'map', span, entries };
}

const nothing = (span: Span): ScalarNode => ({
  kind: 'scalar',
  span,
  value: null,
  source: '',
  plain: true,
});

/** Said once: what is nested too deep once is mostly so a thousand times. */
function passOver(state: Walk, span: Span): ScalarNode {
  const told = tooDeep(span.start);
  if (state.complete) state.report(told.code, told.span, told.message, told.help);
  state.complete = false;
  return nothing(span);
}

function tooMany(state: Walk, frame: Frame): Pick<Walked, 'leadingZeros' | 'complete'> {
  const start = frame.kind === 'list' ? frame.items.at(-1)?.span.start : frame.last?.keySpan.start;
  const from = start ?? frame.span.start;
  const message = `the file holds more than ${MOST_NODES} values`;
  state.report('too-big', { start: from, end: from + 1 }, message, 'split it: one file a session');
  return { leadingZeros: [], complete: false };
}
