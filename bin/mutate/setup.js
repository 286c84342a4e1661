import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { afterAll, expect } from 'vitest';

const active = Number(process.env.MUTANT);
const folder = process.env.MUTATE_COVERAGE;

if (folder === undefined) {
  globalThis.mutantIs = (id) => id === active;
} else {
  const path = relative(process.cwd(), expect.getState().testPath);
  const [reached, atLoad] = [new Set(), new Set()];
  let loading = 0;
  globalThis.moduleLoads = (more) => {
    loading += more;
  };
  globalThis.mutantIs = (id) => {
    reached.add(id);
    if (loading > 0) atLoad.add(id);
    return false;
  };
  afterAll(() => {
    const name = createHash('sha256').update(path).digest('hex');
    const told = { path, reaches: [...reached], atLoad: [...atLoad] };
    writeFileSync(join(folder, name), JSON.stringify(told));
  });
}
