import { expect, it } from 'vitest';
import { characteristicsReference } from '../../src/build/characteristicsReference.ts';

it('the page of characteristics says what the registry says (npx vitest run tests/build -u writes it)', async () => {
  await expect(characteristicsReference()).toMatchFileSnapshot('../../docs/characteristics.md');
});
