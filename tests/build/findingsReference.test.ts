import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findingPage, findingsIndex, pageName } from '../../src/build/findingsReference.ts';
import { findingKinds } from '../../src/checks/catalogue.ts';

const cases = fileURLToPath(new URL('../cases/findings', import.meta.url));
const pages = fileURLToPath(new URL('../../docs/findings', import.meta.url));

const filesOf = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(yaml|txt)$/.test(name))
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );

describe('the pages of findings (npx vitest run tests/build -u writes them)', () => {
  it.each(findingKinds.map((kind) => [kind.code, kind] as const))('%s has its page', async (code, kind) => {
    const page = findingPage(kind, filesOf(join(cases, code.replace('/', '-'))));
    await expect(page).toMatchFileSnapshot(join(pages, pageName(code)));
  });

  it('the index lists every code', async () => {
    await expect(findingsIndex(findingKinds)).toMatchFileSnapshot(join(pages, 'README.md'));
  });

  it('no page is left of a code that is gone', () => {
    const wanted = ['README.md', ...findingKinds.map(({ code }) => pageName(code))].sort();
    expect(readdirSync(pages).sort()).toEqual(wanted);
  });
});
