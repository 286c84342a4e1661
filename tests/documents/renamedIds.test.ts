import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registryWith } from '../../src/characteristics/registry.ts';
import { unknownMeasure } from '../../src/documents/measure.ts';
import { RENAMED_IDS } from '../../src/documents/renamedIds.ts';

const registry = registryWith([]);

describe('an id of an earlier document', () => {
  it.each([...RENAMED_IDS])('%s is none now, and is told the form that is', (id, { now, example }) => {
    expect(registry.find(id)).toBeUndefined();
    expect(registry.find(example.split(',')[0] ?? '')).toBeDefined();
    expect(unknownMeasure(id, registry)).toEqual({
      message: `${id} is now ${now}`,
      help: `write ${example}`,
    });
  });

  it('stands in the page that tells old documents from new', () => {
    const page = readFileSync('docs/changes-in-documents.md', 'utf8');
    for (const id of RENAMED_IDS.keys()) expect(page).toContain(`\`measure: ${id}\``);
  });
});
