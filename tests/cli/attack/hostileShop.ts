import { join } from 'node:path';
import { stringify } from 'yaml';
import { HIDDEN } from '../../output/escape/hidden.ts';
import type { Bench } from '../calling.ts';
import type { Texts } from './attacks.ts';

/** What stands in a shop in place of a hostile text: a name of its own at every place. */
export const NAME = /q[A-Z]\w*/g;

/** Documents by their paths. */
export type Shop = Readonly<Record<string, object>>;

/** Documents as files, each name in them replaced. */
const filesWith = (shop: Shop, textFor: Texts): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(shop).map(([path, document]) => [
      path,
      written(path, replaced(document, textFor)).replaceAll(UNSEEN, escaped),
    ]),
  );

const written = (path: string, document: unknown): string =>
  path.endsWith('.json') ? JSON.stringify(document) : stringify(document, STYLE);

/** The same shop twice: with hostile texts, and with texts as long that are of one line. */
export function putShops(bench: Bench, shop: Shop, hostile: Texts, plain: Texts): void {
  for (const [folder, textFor] of [
    ['hostile', hostile],
    ['plain', plain],
  ] as const) {
    const files = Object.entries(filesWith(shop, textFor));
    bench.put(Object.fromEntries(files.map(([path, text]) => [join(folder, path), text])));
  }
}

/** A document may hold a hidden character only as an escape between quotes. */
const STYLE = {
  lineWidth: 0,
  aliasDuplicateObjects: false,
  defaultStringType: 'QUOTE_DOUBLE',
  defaultKeyType: 'QUOTE_DOUBLE',
  doubleQuotedMinMultiLineLength: Number.POSITIVE_INFINITY,
} as const;

const UNSEEN = new RegExp(HIDDEN, 'gu');

const escaped = (text: string): string =>
  [...Array(text.length).keys()]
    .map((at) => `\\u${text.charCodeAt(at).toString(16).padStart(4, '0')}`)
    .join('');

function replaced(value: unknown, textFor: Texts): unknown {
  if (typeof value === 'string') return value.replace(NAME, textFor);
  if (Array.isArray(value)) return value.map((each) => replaced(each, textFor));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, below]) => [key.replace(NAME, textFor), replaced(below, textFor)]),
  );
}

/** As wide as a hostile text, of the same spaces and hidden characters, of one line and of no meaning to anybody. */
export const harmlessAs =
  (textFor: Texts): Texts =>
  (name) =>
    textFor(name).split(name).map(harmless).join(name);

/** A hostile text of one line: for what is reported otherwise of other words, such as what is wrong with a formula. */
export const oneLineAs =
  (textFor: Texts): Texts =>
  (name) =>
    textFor(name).replaceAll('\n', '\t');

/** Small letters, digits, colons, backslashes and hyphens in a word stay what they are: names and paths are read by them. */
const harmless = (text: string): string =>
  text
    .replaceAll('\n', '\t')
    .replace(/[a-z]/g, 'x')
    .replace(/(?<![\dA-Za-z])[-_]|[-_](?![\dA-Za-z])|[!-,./:-^`-~]/g, (each) =>
      KEPT.includes(each) ? each : 'X',
    )
    .replaceAll('::', ':X');

const KEPT = '0123456789x:\\';
