import { expect, it } from 'vitest';
import { documentsReference } from '../../src/build/documentsReference.ts';

it('the page of documents says what the schemas say (npx vitest run tests/build -u writes it)', async () => {
  await expect(documentsReference()).toMatchFileSnapshot('../../docs/documents.md');
});
