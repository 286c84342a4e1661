import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { SCRIPTS } from '../bundle.js';

/** Bundles programs of this folder from the same sources and in the same way as ours; gives the path of the first. */
export async function bundled(folder, ...names) {
  const entryPoints = names.map((name) => fileURLToPath(new URL(`${name}.js`, import.meta.url)));
  await build({ ...SCRIPTS, legalComments: 'none', entryPoints, entryNames: '[name]', outdir: folder });
  return join(folder, `${names[0]}.cjs`);
}
