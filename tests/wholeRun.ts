import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { SEED } from './propertyRuns.ts';
import { quickestRoom } from './quickestRoom.ts';

/** Before the first test: all that the tests make lies in one folder, which goes after the last. */
export function setup({ config }: TestProject): () => void {
  const isLong = config.env.PROPERTY_RUNS === 'all';
  const room = quickestRoom(isLong);
  const cases = isLong ? 'all cases' : 'a tenth of their cases';
  process.stdout.write(`properties: seed ${SEED}, ${cases}; shops are written below ${room}\n`);
  const folder = mkdtempSync(join(room, 'tenths-tests-'));
  // For other users too: some tests leave root.
  chmodSync(folder, 0o755);
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 50 });
}
