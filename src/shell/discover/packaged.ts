import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { KINDS } from '../../documents/schema/kinds.ts';

/** The schemas that came with the program, by kind. */
export function packagedSchemas(): ReadonlyMap<string, string> {
  const folder = join(packageFolder(import.meta.dirname), 'schemas');
  return new Map(KINDS.map((kind) => [kind, readFileSync(join(folder, `${kind}.json`), 'utf8')]));
}

/** The program runs from dist/ when it is built and from src/ in tests: both lie below the package's folder. */
function packageFolder(folder: string): string {
  if (existsSync(join(folder, 'schemas', 'session.json'))) return folder;
  const parent = dirname(folder);
  if (parent === folder) throw new Error('the package lacks its schemas folder');
  return packageFolder(parent);
}
