import { describe, expect, it } from 'vitest';
import { validate } from '../../../src/documents/validation/validate.ts';
import { ACCEPTED } from '../accepted.ts';
import { readYaml } from '../readYaml.ts';
import { REFUSED } from '../refused.ts';

describe('a document that is as it should be', () => {
  it.each(ACCEPTED)('is accepted: %s', (_, kind, text) => {
    const { data, root, source } = readYaml(text);
    expect(validate(kind, data, root, source)).toEqual([]);
  });
});

describe('a document with a slip', () => {
  it.each(REFUSED)('is told what is wrong, where, and what to do: $title', ({ kind, text, told }) => {
    const { data, root, source } = readYaml(text);
    const found = validate(kind, data, root, source);
    expect(
      found.map(({ place, code, message, help }) => [`${place.line}:${place.column}`, code, message, help]),
    ).toEqual(told);
  });

  it('covers the slip itself and nothing more: from the first character to the last', () => {
    const { data, root, source } = readYaml('kind: engine\nname: A\nlayout: { mains: 5, vavles: 2 }\n');
    expect(validate('engine', data, root, source)[0]?.place).toEqual({
      path: 'document.yaml',
      line: 3,
      column: 21,
      endLine: 3,
      endColumn: 27,
    });
  });

  it('is cut where the text in it is long, and never in the middle of a character', () => {
    const text = `kind: shop\ndecision_rule: ${'𝛼'.repeat(100)}\n`;
    const { data, root, source } = readYaml(text);
    const [found] = validate('shop', data, root, source);
    expect(found?.message).toBe(
      `\`decision_rule\` is the text \`${'𝛼'.repeat(60)}…\`, which is not known here`,
    );
  });

  it('has keys with slashes and tildes found again', () => {
    const text = 'kind: instruments\ninstruments: { "a/b~c": { type: 3 } }\n';
    const { data, root, source } = readYaml(text);
    expect(validate('instruments', data, root, source)).toMatchObject([
      { message: '`type` in instruments a/b~c is the number 3, not text', place: { line: 2, column: 33 } },
    ]);
  });
});
