// Builds everything that is made from the sources: schemas/, the validators, dist/. Says nothing when all is well.
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { BUNDLE, PROGRAM } from './bundle.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const dist = join(root, 'dist');

await writeGenerated(await loadGenerator());
if (existsSync(join(root, 'src/cli/main.ts'))) await bundleProgram();

/** Node 20 runs no TypeScript, so the generator is bundled before it can run; its packages are found from dist/. */
async function loadGenerator() {
  const outfile = join(dist, 'generate.mjs');
  await build({ ...BUNDLE, entryPoints: ['src/build/generate.ts'], packages: 'external', outfile });
  try {
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(outfile);
  }
}

async function writeGenerated({ schemaFiles, validatorsSource }) {
  mkdirSync(join(root, 'schemas'), { recursive: true });
  for (const [name, text] of schemaFiles()) writeIfChanged(join(root, 'schemas', name), text);
  const { outputFiles } = await build({
    ...BUNDLE,
    stdin: { contents: validatorsSource(), resolveDir: root },
    write: false,
    minify: true,
    legalComments: 'none',
  });
  for (const { text } of outputFiles) {
    writeIfChanged(join(root, 'src/documents/validators.generated.js'), text);
  }
}

async function bundleProgram() {
  rmSync(dist, { recursive: true, force: true });
  await build({
    ...PROGRAM,
    entryPoints: ['src/cli/main.ts'],
    outdir: 'dist',
    splitting: true,
    legalComments: 'external',
  });
}

/** A file that stays as it is keeps its time, so that nothing else is built or tested anew. */
function writeIfChanged(path, text) {
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}
