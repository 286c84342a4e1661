import { describe, expect, it } from 'vitest';
import { validate } from '../../src/documents/validate.ts';
import { ACCEPTED } from './accepted.ts';
import { readYaml } from './readYaml.ts';

describe('a document that is as it should be', () => {
  it.each(ACCEPTED)('is accepted: %s', (_, kind, text) => {
    const { data, root, source } = readYaml(text);
    expect(validate(kind, data, root, source)).toEqual([]);
  });
});
