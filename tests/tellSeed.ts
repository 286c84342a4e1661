import type { TestProject } from 'vitest/node';
import { SEED } from './propertyRuns.ts';

/** Before the first test. */
export function setup({ config }: TestProject): void {
  const cases = config.env.PROPERTY_RUNS === 'all' ? 'all cases' : 'a tenth of their cases';
  process.stdout.write(`properties: seed ${SEED}, ${cases}\n`);
}
