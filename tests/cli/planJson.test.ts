import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { planPageSchema } from '../../src/output/schema/planPageSchema.ts';
import { planSchema } from '../../src/output/schema/planSchema.ts';
import { call } from './call.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Fields may be added within a version, but not without the schema saying so. */
const closed = (schema: object): object =>
  JSON.parse(JSON.stringify(schema), (_, value: unknown) =>
    typeof value === 'object' && value !== null && 'required' in value
      ? { ...value, additionalProperties: false }
      : value,
  );

const ajv = new Ajv({ strict: true, strictRequired: false });
const validate = ajv.compile(closed(planSchema()));
const validatePage = ajv.compile(closed(planPageSchema()));

describe('a plan in JSON is as its schema says', () => {
  test.each([
    ['examples', ['generator-set-6', '--session', 'teardown']],
    ['examples', ['drainage-pump-8', '--session', 'teardown']],
    ['examples', ['reservoir-pump-2', '--session', 'trial']],
    ['examples', ['generator-set-6']],
    ['tests/cases/plan/teardown', []],
  ])('%s %j', async (folder, words) => {
    const { out, err, exit } = await call(join(ROOT, folder), ['plan', ...words, '--format', 'json']);
    expect(err).toBe('');
    const printed: { readonly exit?: unknown } = JSON.parse(out);
    expect(printed.exit).toBe(exit);
    validate(printed);
    expect(validate.errors).toBe(null);
  });
});

describe('a page in JSON is as its schema says', () => {
  test.each(
    [['--fit'], ['--for', 'customer'], ['--for', 'machine-shop'], ['--order'], ['--closing']].flatMap(
      (page) =>
        [
          ['examples', ['generator-set-6', '--session', 'teardown', ...page]],
          ['tests/cases/plan/pages', page],
        ] as const,
    ),
  )('%s %j', async (folder, words) => {
    const { out, err, exit } = await call(join(ROOT, folder), ['plan', ...words, '--format', 'json']);
    expect(err).toBe('');
    const printed: { readonly exit?: unknown } = JSON.parse(out);
    expect(printed.exit).toBe(exit);
    validatePage(printed);
    expect(validatePage.errors).toBe(null);
  });
});
