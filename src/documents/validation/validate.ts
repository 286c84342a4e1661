import { type Diagnostic, diagnostic, sortDiagnostics } from '../../diagnostic/diagnostic.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { inOneSentence } from '../../quantity/words.ts';
import type { Kind } from '../schema/kinds.ts';
import { PATTERNS } from '../schema/patterns.ts';
import { inFlow } from '../writing/inFlow.ts';
import type { Node, SourceText, Span } from '../yaml/node.ts';
import { itemName, subjectName } from './itemName.ts';
import { follow, spanOfKey, spanOfOwner, spanOfValue } from './nodeAtPath.ts';
import { type Refusal, refusalsOf, withoutMisspelt } from './refusal.ts';
import {
  engine,
  instruments,
  limits,
  part,
  session,
  shop,
  stock,
  torque,
  type Validator,
} from './validators.generated.js';
import { type Words, wrongChoice, wrongContent, wrongType } from './wrongValue.ts';

const VALIDATORS: Readonly<Record<Kind, Validator>> = {
  shop,
  engine,
  limits,
  instruments,
  session,
  torque,
  stock,
  part,
};

/**
 * Everything the schema of its kind has against a document, in our words, sorted by place.
 *
 * `data` is the document as plain values and `root` the same document with its places. What needs more than one
 * value to judge (units that fit, known characteristics and positions, dates in the calendar) is checked elsewhere.
 */
export function validate(kind: Kind, data: unknown, root: Node, source: SourceText): Diagnostic[] {
  const validator = VALIDATORS[kind];
  if (validator(data)) return [];
  const reported = withoutMisspelt(refusalsOf(validator.errors ?? []))
    .filter((each) => !isReported(follow(root, each.path).node))
    .map((each) => translate(each, root, source));
  return sortDiagnostics(
    reported.filter((each, index) => index === reported.findIndex((other) => isSame(each, other))),
  );
}

/** The loader has said what is wrong with this scalar; what the schema thinks of it is only an echo. */
const isReported = (node: Node): boolean => node.kind === 'scalar' && node.refused === true;

const isSame = (a: Diagnostic, b: Diagnostic): boolean =>
  a.message === b.message && a.place.line === b.place.line && a.place.column === b.place.column;

function translate(refusal: Refusal, root: Node, source: SourceText): Diagnostic {
  const { code, message, help, span } =
    TRANSLATIONS[refusal.keyword]?.(refusal, root) ?? ofContent(refusal, root);
  return diagnostic(code, source.place(span), message, help);
}

interface Translation extends Pick<Words, 'code' | 'help'> {
  readonly message: string;
  readonly span: Span;
}

type Translate = (refusal: Refusal, root: Node) => Translation;

const unknownKey: Translate = ({ path, params, schema }, root) => {
  const key = String(params.additionalProperty);
  const known = keysOf(schema.properties);
  return {
    code: 'unknown-key',
    message: `unknown key \`${key}\`${inside(itemName(root, path))}`,
    help: didYouMean(key, known) ?? knownKeys(known, schema),
    span: spanOfKey(follow(root, path), key),
  };
};

/** Where a shop may add keys of its own, it is the spelling that is wrong, and the list of known keys is no help. */
function knownKeys(known: readonly string[], { patternProperties }: Refusal['schema']): string {
  const help = keysOf(patternProperties).map((pattern) => SPELLINGS[pattern]);
  return help[0] ?? `known keys: ${known.join(', ')}`;
}

const SPELLINGS: Readonly<Record<string, string>> = {
  [PATTERNS.identifier]: 'write it in small letters, digits and _, beginning with a letter',
  [PATTERNS.grade]: 'write std, or a size with under or over, such as 0.010 under',
};

const missingKey: Translate = ({ path, params, schema }, root) => {
  const key = String(params.missingProperty);
  const beside = typeof params.property === 'string' ? `, and \`${params.property}\` needs it` : '';
  return {
    code: 'missing-key',
    message: `\`${key}\` is missing${inside(itemName(root, path))}${beside}`,
    help: `add it${example(key, schema.properties)}`,
    span: spanOfOwner(follow(root, path)),
  };
};

const missingChoice: Translate = ({ path, params }, root) => {
  const keys = [params.keys].flat().map((key) => `\`${key}\``);
  return {
    code: 'missing-key',
    message: `${inOneSentence(keys)} are ${keys.length === 2 ? 'both' : 'all'} missing${inside(itemName(root, path))}`,
    help: 'add at least one of them',
    span: spanOfOwner(follow(root, path)),
  };
};

const ofValue =
  (wordsOf: (refusal: Refusal, node: Node) => Words): Translate =>
  (refusal, root) => {
    const here = follow(root, refusal.path);
    const { code, what, help } = wordsOf(refusal, here.node);
    const { subject, owner } = subjectName(root, refusal.path);
    return { code, message: `${subject}${inside(owner)} ${what}`, help, span: spanOfValue(here) };
  };

const ofContent = ofValue(wrongContent);

const TRANSLATIONS: Readonly<Record<string, Translate>> = {
  additionalProperties: unknownKey,
  required: missingKey,
  dependencies: missingKey,
  keys: missingChoice,
  type: ofValue(wrongType),
  anyOf: ofValue(wrongType),
  enum: ofValue(wrongChoice),
};

const inside = (owner: string): string => (owner === '' ? '' : ` in ${owner}`);

const keysOf = (properties: unknown): string[] => Object.keys(properties ?? {});

/** The build leaves the first example of every required key in the validators. */
function example(key: string, properties: unknown): string {
  const shape: unknown = Object(properties)[key];
  const examples: unknown = Object(shape).examples;
  if (!Array.isArray(examples)) return '';
  const [first] = examples;
  return `, for example \`${key}: ${inFlow(first)}\``;
}
