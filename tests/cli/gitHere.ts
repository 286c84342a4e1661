import { cpSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { temporaryFolder } from '../shell/gitShop.ts';
import { makeBenchShop } from './benchShop.ts';

/** A copy of the bench shop for each test. */
export function withBenchShop(): { parent: string; shop: string } {
  const here = { parent: '', shop: '' };
  let pattern = '';
  beforeAll(() => {
    pattern = temporaryFolder();
    makeBenchShop(pattern);
  });
  afterAll(() => rmSync(pattern, { recursive: true }));
  beforeEach(() => {
    here.parent = temporaryFolder();
    cpSync(pattern, here.parent, { recursive: true });
    here.shop = join(here.parent, 'Übung shop');
  });
  afterEach(() => rmSync(here.parent, { recursive: true }));
  return here;
}
