import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { importsOf } from './imports.ts';

const tests = fileURLToPath(new URL('.', import.meta.url));
const asked = join(tests, 'propertyRuns.ts');

/** The tests that try more in the long run: what asks how many to try, itself or through another file of the tests. */
export function longTests(): readonly string[] {
  const files = readdirSync(tests, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(tests, name));
  const imported = new Map(files.map((file) => [file, importedBy(file)]));
  const asking = new Set([asked]);
  for (const each of asking) {
    for (const [file, from] of imported) if (from.has(each)) asking.add(file);
  }
  return [...asking]
    .filter((file) => file.endsWith('.test.ts'))
    .map((file) => relative(dirname(tests), file));
}

const importedBy = (file: string): ReadonlySet<string> =>
  new Set(importsOf(readFileSync(file, 'utf8')).map(({ from }) => join(dirname(file), from)));
