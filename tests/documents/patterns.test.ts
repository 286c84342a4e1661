import { checkSync } from 'recheck/lib/browser.js';
import { expect, it } from 'vitest';
import { characteristics } from '../../src/characteristics/registry.ts';
import { buildSchemas } from '../../src/documents/schema/schemas.ts';
import { isLong } from '../propertyRuns.ts';

/** Every pattern of a schema, whether of a value or of a key. */
function patternsIn(node: unknown): readonly string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => [
    ...(key === 'pattern' && typeof value === 'string' ? [value] : []),
    ...(key === 'patternProperties' ? Object.keys(value) : []),
    ...patternsIn(value),
  ]);
}

const PATTERNS = [...new Set(patternsIn(buildSchemas(characteristics)))];

/** Of the longest it takes seconds to tell. */
const ASKED = PATTERNS.filter((pattern) => isLong || pattern.length < 100);

/** By characters read, and not by a clock: on a busy machine a text would seem to take long that does not. */
const NO_CLOCK = { timeout: null, attackTimeout: null, incubationTimeout: null };

it.each(ASKED)('no text makes this pattern try again and again: %s', (pattern) => {
  expect(checkSync(pattern, 'u', NO_CLOCK).status).toBe('safe');
});

it('one that would is found', () => {
  expect(ASKED.length).toBeGreaterThan(5);
  expect(checkSync('^([a-z]+)+$', 'u', NO_CLOCK).status).toBe('vulnerable');
});
