import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registryWith } from '../../src/characteristics/registry.ts';
import { unknownMeasure } from '../../src/documents/measure.ts';
import { RENAMED_IDS } from '../../src/documents/renamedIds.ts';
import { ENGINE, type Files, limitsOf, shopOf } from '../shopOf.ts';

const registry = registryWith([]);

const limitsWith = (formula: string): Files => ({
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(`piston_clearance: { new: { max: { formula: "${formula}" } } }`),
});
const ownWith = (formula: string): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in }\ncharacteristics:\n  gap_share: { label: share, quantity: length, positions: cylinder, formula: "${formula}" }\n`,
  'e/engine.yaml': ENGINE,
});
const helpsOf = (files: Files) => shopOf(files).diagnostics.map(({ help }) => help);

describe('an id of an earlier document', () => {
  it.each([...RENAMED_IDS])(
    '%s is none now, and is told the form that is',
    (id, { now, example, inFormulas }) => {
      expect(registry.find(id)).toBeUndefined();
      expect(registry.find(example.split(',')[0] ?? '')).toBeDefined();
      expect(unknownMeasure(id, registry)).toEqual({
        message: `${id} is now ${now}`,
        help: `write ${example}`,
      });
      for (const formula of [`0.5 * ${id}`, `${id} + cylinder_bore`]) {
        expect(helpsOf(limitsWith(formula))).toEqual([`write ${inFormulas}`]);
        expect(helpsOf(ownWith(formula))).toEqual([`write ${inFormulas}`]);
      }
      expect(helpsOf(limitsWith(`0.5 * ${inFormulas}`))).toEqual([]);
      expect(helpsOf(ownWith(`0.5 * ${inFormulas}`))).toEqual([]);
    },
  );

  it('stands in the page that tells old documents from new', () => {
    const page = readFileSync('docs/changes-in-documents.md', 'utf8');
    for (const id of RENAMED_IDS.keys()) expect(page).toContain(`\`measure: ${id}\``);
  });
});
