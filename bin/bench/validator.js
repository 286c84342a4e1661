import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fetchPackage } from '../fetched.js';

/** Which documents of a shop are of which kind, in the patterns of the validator. */
const DOCUMENTS = {
  shop: 'shop.yaml',
  instruments: 'instruments.yaml',
  engine: 'engines/*/engine.yaml',
  limits: 'engines/*/limits.yaml',
  torque: 'engines/*/torque/*.yaml',
  session: 'engines/*/sessions/*.yaml',
};

/**
 * What whoever has YAML documents and JSON Schemas picks as a rule: the command-line wrapper of ajv. It knows one schema a
 * call, so a shop takes one call a kind, and it holds documents against schemas and nothing else.
 * @returns the words after `node` by kind; undefined where the package cannot be fetched
 */
export function validatorCalls(folder) {
  const program = fetched();
  if (program === undefined) return undefined;
  const schema = (kind) => fileURLToPath(new URL(`../../schemas/${kind}.json`, import.meta.url));
  const calls = Object.entries(DOCUMENTS).map(([kind, pattern]) => [
    kind,
    [program, ...ALL, '-s', schema(kind), '-d', join(folder, pattern)],
  ]);
  return Object.fromEntries(calls);
}

/** Every error, as ours tells, but none printed; without `strict` it takes the words that our schemas have for editors. */
const ALL = ['validate', '--strict=false', '--all-errors', '--errors=no'];

/** It takes a date for no text, ends with 1 and names the document on stderr. */
export const validate = (words, { timed }) => timed(words, { exit: [0, 1], talks: true });

function fetched() {
  try {
    return fetchPackage('ajv-cli', '5.0.0', 'dist/index.js');
  } catch {
    return undefined;
  }
}
