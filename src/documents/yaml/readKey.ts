import { isAlias, isScalar, type Pair, type Node as ParsedNode, type Scalar } from 'yaml';
import { quoted } from '../../diagnostic/quoted.ts';
import { reportSplitNumber, splitByComma } from '../validation/decimalComma.ts';
import { keyTrouble } from './key.ts';
import { type Entry, parsedSpan, type SourceText, type Span } from './node.ts';
import type { Report } from './problem.ts';
import { refuseAlias, refuseProperties } from './properties.ts';
import { refuseEscapedControls } from './readScalar.ts';

interface Around {
  readonly entries: ReadonlyMap<string, Entry>;
  readonly last: Pick<Entry, 'keySpan' | 'node'> | undefined;
}

interface Key {
  readonly keySpan: Span;
  /** Undefined, and reported, when no entry can be made of it. */
  readonly key: string | undefined;
}

export function readKey(pair: Pair, around: Around, source: SourceText, report: Report): Key {
  const parsed = pair.key;
  if (!isScalar(parsed)) return { keySpan: refuseKey(parsed, report), key: undefined };
  const name = parsed.source ?? '';
  const keySpan = parsedSpan(parsed);
  const halves = splitByComma(name, keySpan, pair.value, around.last?.node, source.text);
  if (halves !== undefined) reportSplitNumber(halves, source.text, report);
  else if (isSound(parsed, name, keySpan, source.text, report)) {
    return { keySpan, key: distinct(name.normalize('NFC'), keySpan, around.entries, source, report) };
  }
  return { keySpan, key: undefined };
}

function refuseKey(parsed: unknown, report: Report): Span {
  if (isAlias(parsed)) return refuseAlias(parsed, report);
  const span = parsedSpan(parsed as ParsedNode);
  report('key', span, 'a key is a list or a map', 'write a name or a number');
  return span;
}

function isSound(parsed: Scalar, name: string, span: Span, text: string, report: Report): boolean {
  refuseProperties(parsed, span, text, report);
  if (parsed.type === 'QUOTE_DOUBLE' && refuseEscapedControls(name, span, text, report)) return false;
  const trouble = keyTrouble(name, parsed.type === 'PLAIN');
  if (trouble === undefined) return true;
  report('key', span, trouble.message, trouble.help);
  return trouble.usable;
}

function distinct(
  key: string,
  keySpan: Span,
  entries: Around['entries'],
  source: SourceText,
  report: Report,
): string | undefined {
  const first = entries.get(key);
  if (first === undefined) return key;
  const { line } = source.place(first.keySpan);
  report(
    'duplicate-key',
    keySpan,
    `the key ${quoted(key)} is written twice; first on line ${line}`,
    'keep one of the two',
  );
  return undefined;
}
