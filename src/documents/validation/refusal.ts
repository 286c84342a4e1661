import { nearest } from '../../diagnostic/suggestion.ts';
import type { SchemaError } from './validators.generated.js';

/** One thing that is wrong with a document, as the schema sees it; still without words and place. */
export interface Refusal {
  /** Keys and list indexes from the root. */
  readonly path: readonly string[];
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly schema: Readonly<Record<string, unknown>>;
  readonly data: unknown;
  /** The types that would have been right, where it is the type that is wrong. */
  readonly wanted: ReadonlySet<string>;
}

/** What is left of ajv's errors when each mistake is reported once, where it was made. */
export function refusalsOf(errors: readonly SchemaError[]): Refusal[] {
  const reported: Refusal[] = [];
  for (const error of errors) {
    if (error.keyword === 'anyOf') reportUnion(error, reported);
    else if (error.keyword !== 'if') reported.push(refusal(error, wantedBy(error)));
  }
  return reported;
}

/** A key that is missing because it is misspelt just beside is reported once, as the unknown key that it is. */
export function withoutMisspelt(refusals: readonly Refusal[]): Refusal[] {
  const meant = new Set(refusals.flatMap(meantKey));
  const stands = ({ path }: Refusal, key: unknown) => meant.has(JSON.stringify([path, key]));
  return refusals.filter((each) => {
    if (each.keyword === 'required') return !stands(each, each.params.missingProperty);
    return each.keyword !== 'keys' || ![each.params.keys].flat().some((key) => stands(each, key));
  });
}

function meantKey({ keyword, path, params, schema }: Refusal): string[] {
  if (keyword !== 'additionalProperties') return [];
  const meant = nearest(String(params.additionalProperty), Object.keys(schema.properties ?? {}));
  return meant === undefined ? [] : [JSON.stringify([path, meant])];
}

/**
 * Behind a failed `anyOf` stand the errors of its branches. Every union of ours has at most one branch a type of
 * value that holds others, so for a map or a list the branch of its type speaks; a single value is refused by the
 * union as a whole, in one message.
 */
function reportUnion(error: SchemaError, reported: Refusal[]): void {
  if (isChoiceOfKeys(error)) {
    while (isOneKeyOf(reported.at(-1), error)) reported.pop();
    reported.push({ ...refusal(error, new Set()), keyword: 'keys', params: { keys: keysOf(error) } });
    return;
  }
  const branches = takeBranches(error, reported);
  const wrongType = branches.filter((each) => isTypeAt(each, error));
  const spoken = branches.filter((each) => !isTypeAt(each, error));
  if (holdsOthers(error.data) && spoken.length > 0) reported.push(...spoken);
  else
    reported.push(refusal(error, spoken.some(isOfSize) ? new Set() : wantedInstead(error.data, wrongType)));
}

/** Where a branch takes text, it is not the type of a text that is wrong; but it may stand for a number. */
function wantedInstead(data: unknown, branches: readonly Refusal[]): ReadonlySet<string> {
  const wanted = new Set(branches.flatMap((each) => [...each.wanted]));
  if (typeof data !== 'string' || wanted.has('string')) return wanted;
  return wanted.has('number') || wanted.has('integer') ? wanted : new Set();
}

const isOfSize = ({ keyword }: Refusal): boolean => keyword === 'minimum' || keyword === 'maximum';

function takeBranches({ instancePath }: SchemaError, reported: Refusal[]): Refusal[] {
  const from = reported.findLastIndex(({ path }) => !isWithin(pointerOf(path), instancePath));
  return reported.splice(from + 1);
}

const refusal = (error: SchemaError, wanted: ReadonlySet<string>): Refusal => ({
  path: pathOf(error.instancePath),
  keyword: error.keyword,
  params: error.params,
  schema: error.parentSchema,
  data: error.data,
  wanted,
});

const wantedBy = ({ keyword, params }: SchemaError): ReadonlySet<string> =>
  new Set(keyword === 'type' ? [params.type].flat().map(String) : []);

const isTypeAt = ({ keyword, path }: Refusal, { instancePath }: SchemaError): boolean =>
  keyword === 'type' && pointerOf(path) === instancePath;

/** "One of these keys at least": the branches are nothing but `required`. */
const isChoiceOfKeys = ({ parentSchema }: SchemaError): boolean => requiredOf(parentSchema.anyOf).length > 0;

const keysOf = ({ parentSchema }: SchemaError): string[] => requiredOf(parentSchema.anyOf);

function requiredOf(branches: unknown): string[] {
  if (!Array.isArray(branches)) return [];
  return branches.flatMap((each) =>
    Array.isArray(each.required) && each.type === undefined ? each.required : [],
  );
}

const isOneKeyOf = (last: Refusal | undefined, error: SchemaError): boolean =>
  last?.keyword === 'required' && pointerOf(last.path) === error.instancePath;

const holdsOthers = (data: unknown): boolean => typeof data === 'object' && data !== null;

const isWithin = (pointer: string, outer: string): boolean =>
  pointer === outer || pointer.startsWith(`${outer}/`);

const pathOf = (pointer: string): string[] =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((each) => each.replaceAll('~1', '/').replaceAll('~0', '~'));

const pointerOf = (path: readonly string[]): string =>
  path.map((each) => `/${each.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
