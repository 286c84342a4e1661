import { Ajv } from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { characteristics } from '../characteristics/registry.ts';
import { KINDS } from '../documents/schema/kinds.ts';
import { buildSchemas } from '../documents/schema/schemas.ts';
import { checkSchema } from '../output/schema/checkSchema.ts';
import { diffSchema } from '../output/schema/diffSchema.ts';
import { filmSchema } from '../output/schema/filmSchema.ts';
import { pagesSchema } from '../output/schema/pagesSchema.ts';
import { planPageSchema } from '../output/schema/planPageSchema.ts';
import { planSchema } from '../output/schema/planSchema.ts';
import { torqueSchema } from '../output/schema/torqueSchema.ts';
import { trendSchema } from '../output/schema/trendSchema.ts';
import { compact, SHARED } from './compact.ts';

/** Keywords beside the standard ones: both are shown by editors, `errorMessage` by our diagnostics too. */
const OUR_VOCABULARY = ['enumDescriptions', 'errorMessage'];

/** The files of schemas/: name to text. */
export function schemaFiles(): ReadonlyMap<string, string> {
  const schemas = buildSchemas(characteristics);
  const documents = KINDS.map((kind) => [`${kind}.json`, schemas[kind]] as const);
  const outputs = [
    ['check-output.json', checkSchema()],
    ['diff-output.json', diffSchema()],
    ['pages-output.json', pagesSchema()],
    ['film-output.json', filmSchema()],
    ['plan-output.json', planSchema()],
    ['plan-page-output.json', planPageSchema()],
    ['torque-output.json', torqueSchema()],
    ['trend-output.json', trendSchema()],
  ] as const;
  const all = [...documents, ...outputs];
  return new Map(all.map(([name, schema]) => [name, `${JSON.stringify(schema, null, 2)}\n`]));
}

/**
 * The source of one module that exports a validator a kind, and still names ajv's own small helpers: whoever
 * writes it to a file bundles it, so that nothing of ajv is needed at run time.
 */
export function validatorsSource(): string {
  const ajv = newAjv();
  const schemas = buildSchemas(characteristics);
  const { shared, documents } = compact(KINDS.map((kind) => schemas[kind]));
  ajv.addSchema(shared, SHARED);
  for (const [index, kind] of KINDS.entries()) ajv.addSchema(documents[index] ?? {}, kind);
  return standalone.default(ajv, Object.fromEntries(KINDS.map((kind) => [kind, kind])));
}

/**
 * `allErrors` is safe because the loader bounds every document before it is validated; `verbose` hands over the
 * schema beside each error, which is where the translation finds the keys and words that would have been right.
 */
export function newAjv(): Ajv {
  const ajv = new Ajv({
    strict: true,
    // Off, since keys are required in branches (`if`, `anyOf`) that do not repeat the properties.
    strictRequired: false,
    strictTypes: true,
    allErrors: true,
    verbose: true,
    messages: false,
    ownProperties: true,
    inlineRefs: false,
    allowMatchingProperties: true,
    // Longer lists of words, such as those of all characteristics, would be gone through by a helper of ajv's at run time.
    loopEnum: Number.POSITIVE_INFINITY,
    code: { source: true, esm: true, lines: true },
  });
  ajv.addVocabulary(OUR_VOCABULARY);
  return ajv;
}
