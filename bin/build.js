// Builds everything that is made from the sources: schemas/, the validators, dist/. Says nothing when all is well.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { BUNDLE, SCRIPTS } from './bundle.js';
import { bundledPackages, noticesText } from './notices.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const dist = join(root, 'dist');
/** The program's first look at its arguments, all the rest, `check` by itself, a thread of a long run, what writes pages, and what `calc` and `export` alone work with. */
const SCRIPT_SOURCES = [
  'src/cli/main.ts',
  'src/cli/run.ts',
  'src/cli/checkAlone.ts',
  'src/cli/check/poolMember.ts',
  'src/output/page/page.ts',
  'src/calculator/calculator.ts',
  'src/parquet/parquetBytes.ts',
];

const ofValidators = await writeGenerated(await loadSource('src/build/generate.ts'));
if (existsSync(join(root, 'src/cli/main.ts'))) await bundleProgram(ofValidators);

/** Node 20 runs no TypeScript, so a source is bundled before the build can call it; its packages are found from dist/. */
async function loadSource(source) {
  const outfile = join(dist, 'source.mjs');
  await build({ ...BUNDLE, entryPoints: [source], packages: 'external', outfile });
  try {
    return await import(`${pathToFileURL(outfile).href}?${source}`);
  } finally {
    rmSync(outfile);
  }
}

/** Gives what esbuild says of the validators' inputs. */
async function writeGenerated({ schemaFiles, validatorsSource }) {
  mkdirSync(join(root, 'schemas'), { recursive: true });
  for (const [name, text] of schemaFiles()) writeIfChanged(join(root, 'schemas', name), text);
  const { outputFiles, metafile } = await build({
    ...BUNDLE,
    metafile: true,
    stdin: { contents: validatorsSource(), resolveDir: root },
    write: false,
    minify: true,
    legalComments: 'none',
  });
  for (const { text } of outputFiles) {
    writeIfChanged(join(root, 'src/documents/validation/validators.generated.js'), text);
  }
  return metafile;
}

async function bundleProgram(ofValidators) {
  rmSync(dist, { recursive: true, force: true });
  const { metafile } = await build({
    ...SCRIPTS,
    entryPoints: SCRIPT_SOURCES,
    entryNames: '[name]',
    outdir: 'dist',
    metafile: true,
  });
  // Results of another program are not believed: dist/build.txt says which one this is.
  writeFileSync(join(dist, 'build.txt'), digestOfFiles(Object.keys(metafile.outputs)));
  writeFileSync(join(dist, 'NOTICES.txt'), noticesText(root, bundledPackages([ofValidators, metafile])));
}

function digestOfFiles(paths) {
  const hash = createHash('sha256');
  for (const path of paths.toSorted()) hash.update(readFileSync(join(root, path)));
  return hash.digest('hex');
}

/** A file that stays as it is keeps its time, so that nothing else is built or tested anew. */
function writeIfChanged(path, text) {
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}
