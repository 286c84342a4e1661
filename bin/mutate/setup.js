import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, expect } from 'vitest';

const active = Number(process.env.MUTANT);
const folder = process.env.MUTATE_COVERAGE;

if (folder === undefined) {
  globalThis.mutantIs = (id) => id === active;
} else {
  const path = relative(process.cwd(), expect.getState().testPath);
  const [reached, atLoad] = [new Set(), new Set()];
  let isLoading = true;
  globalThis.mutantIs = (id) => {
    reached.add(id);
    if (isLoading) atLoad.add(id);
    return false;
  };
  beforeAll(() => {
    isLoading = false;
  });
  afterAll(() => {
    const name = createHash('sha256').update(path).digest('hex');
    const told = { path, reaches: [...reached], atLoad: [...atLoad] };
    writeFileSync(join(folder, name), JSON.stringify(told));
  });
}
