import { expect, it } from 'vitest';
import { characteristicsReference } from '../../src/build/characteristicsReference.ts';

it('the page writes an, and not a, before a vowel', () => {
  expect(characteristicsReference().match(/.{0,30}\ba [aeio]\w*/g) ?? []).toEqual([]);
});

it.each(characteristicsReference().split('\n## ').slice(1))('%s: may be below zero, or never', (section) => {
  const said = ['- Never below zero', '- Below zero where'].filter((line) => section.includes(line));
  expect(said.length).toBeLessThan(2);
});

it('the page of characteristics says what the registry says (npx vitest run tests/build -u writes it)', async () => {
  await expect(characteristicsReference()).toMatchFileSnapshot('../../docs/characteristics.md');
});
