import { expect, it } from 'vitest';
import { findingKinds } from '../../src/checks/catalogue.ts';

it.each(findingKinds.map((kind) => [kind.code, kind] as const))(
  '%s says in sentences what it means, why it matters and what people do, and shows how it reads',
  (_, { means, matters, usually, example }) => {
    for (const text of [means, matters, usually]) expect(text).toMatch(/^[A-Z`].+\.$/);
    expect(example).not.toBe('');
  },
);

it('no two findings have one code', () => {
  const codes = findingKinds.map(({ code }) => code);
  expect(new Set(codes).size).toBe(codes.length);
});
