import { cpSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, vi } from 'vitest';
import { temporaryFolder } from '../shell/gitShop.ts';
import { makeBenchShop } from './benchShop.ts';

/** A copy of the bench shop for each test; the settings of whoever runs the tests do not matter. */
export function withBenchShop(): { parent: string; shop: string } {
  const here = { parent: '', shop: '' };
  let pattern = '';
  beforeAll(() => {
    vi.stubEnv('GIT_CONFIG_GLOBAL', '/dev/null');
    vi.stubEnv('GIT_CONFIG_NOSYSTEM', '1');
    pattern = temporaryFolder();
    makeBenchShop(pattern);
  });
  afterAll(() => {
    vi.unstubAllEnvs();
    rmSync(pattern, { recursive: true });
  });
  beforeEach(() => {
    here.parent = temporaryFolder();
    cpSync(pattern, here.parent, { recursive: true });
    here.shop = join(here.parent, 'Übung shop');
  });
  afterEach(() => rmSync(here.parent, { recursive: true }));
  return here;
}
