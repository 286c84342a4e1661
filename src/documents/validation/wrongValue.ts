import type { DocumentCode } from '../../diagnostic/diagnostic.ts';
import { quoted } from '../../diagnostic/quoted.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { notANumber } from '../numberText.ts';
import type { Node } from '../yaml/node.ts';
import { plainFormula } from './plainFormula.ts';
import type { Refusal } from './refusal.ts';

/** The words of a diagnostic about one value: `what` follows the value's name. */
export interface Words {
  readonly code: DocumentCode;
  readonly what: string;
  readonly help: string;
}

/** YAML 1.1 read these as true and false; here they are words, and that surprises people. */
const SWITCHES = new Map([
  ...['yes', 'on', 'y'].map((word) => [word, true] as const),
  ...['no', 'off', 'n'].map((word) => [word, false] as const),
]);

const TYPE_NAMES: Readonly<Record<string, string>> = {
  number: 'a number',
  integer: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  object: 'keys with values',
  array: 'a list',
};

/** A value of the wrong type, or one that no branch of a union takes. */
export function wrongType(refusal: Refusal, node: Node): Words {
  const { data, wanted } = refusal;
  if (data === null) return { code: 'type', what: 'is empty', help: helpOf(refusal) };
  const formula = typeof data === 'string' ? plainFormula(data, helpOf(refusal)) : undefined;
  if (formula !== undefined)
    return { code: 'value', what: `${called(data, node)}, a formula without its key`, help: formula };
  const number = typeof data === 'string' && wantsNumber(wanted) ? notANumber(data) : undefined;
  if (number !== undefined) {
    const reason = number.reason === undefined ? '' : `, ${number.reason}`;
    return { code: number.code, what: `${called(data, node)}${reason}`, help: number.help };
  }
  if (wanted.size === 0) return { code: 'value', what: called(data, node), help: helpOf(refusal) };
  return {
    code: 'type',
    what: `${called(data, node)}, not ${namesOf(wanted)}`,
    help: typeHelp(refusal, node),
  };
}

function typeHelp(refusal: Refusal, node: Node): string {
  const { data, wanted } = refusal;
  const meant =
    typeof data === 'string' && wanted.has('boolean') ? SWITCHES.get(data.toLowerCase()) : undefined;
  if (meant !== undefined) return `write ${meant}`;
  if (typeof data !== 'string' && wanted.size === 1 && wanted.has('string') && node.kind === 'scalar') {
    return `write it in quotes: "${node.source}"`;
  }
  return helpOf(refusal);
}

/** A value of the right type that is none of the known words. */
export function wrongChoice({ data, params, schema }: Refusal, node: Node): Words {
  const allowed = [params.allowedValues].flat().map(String);
  const meant = typeof data === 'string' ? didYouMean(data, allowed) : undefined;
  // The words that would do are reported once: here, or in the help.
  const help = meant ?? errorMessage(schema) ?? `write one of ${allowed.join(', ')}`;
  const isReported = allowed.every((word) => help.includes(word));
  const few = allowed.length === 1 ? `not ${allowed[0]}` : `none of ${allowed.join(', ')}`;
  const none = isReported && allowed.length > 1 ? 'which is not known here' : few;
  const what = data === null ? 'is empty' : `${called(data, node)}, ${none}`;
  return {
    code: data === null ? 'type' : 'value',
    what,
    help,
  };
}

/** A value refused by its pattern, its size or its being empty. */
export function wrongContent(refusal: Refusal, node: Node): Words {
  const empty = ['minItems', 'minProperties'].includes(refusal.keyword);
  return {
    code: 'value',
    what: empty ? 'holds nothing' : called(refusal.data, node),
    help: empty ? (errorMessage(refusal.schema) ?? 'put something in it, or leave it out') : helpOf(refusal),
  };
}

function called(data: unknown, node: Node): string {
  const source = node.kind === 'scalar' ? node.source : '';
  if (Array.isArray(data)) return 'is a list';
  if (typeof data === 'string' && data.trim() === '') return 'is text with nothing in it';
  if (typeof data === 'string')
    return `is the ${SWITCHES.has(data.toLowerCase()) ? 'word' : 'text'} ${quoted(data)}`;
  if (typeof data === 'number') return `is the number ${source === '' ? data : source}`;
  return typeof data === 'boolean' ? `is ${data}` : 'is keys with values';
}

const wantsNumber = (wanted: ReadonlySet<string>): boolean => wanted.has('number') || wanted.has('integer');

/** Where a number is wanted that is the whole story; the other shapes are in the help. */
function namesOf(wanted: ReadonlySet<string>): string {
  const names = Object.entries(TYPE_NAMES).flatMap(([type, name]) => (wanted.has(type) ? name : []));
  return wantsNumber(wanted) ? (names.find((name) => name.endsWith('number')) ?? '') : names.join(' or ');
}

const helpOf = ({ schema, wanted }: Refusal): string =>
  errorMessage(schema) ??
  (wanted.has('array') ? 'write a list, such as [a, b]' : 'write keys and their values');

const errorMessage = ({ errorMessage }: Refusal['schema']): string | undefined =>
  typeof errorMessage === 'string' ? errorMessage : undefined;
