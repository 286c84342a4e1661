import { existsSync, lstatSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Plugin as BuildPlugin, build } from 'esbuild';
import type { Plugin } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const sources = join(root, 'src');
const packages = join(root, 'node_modules');
/** Below node_modules, so that vitest leaves them to node. */
const compiled = join(packages, '.tenths-sources');

interface Compiling {
  /** A folder below node_modules. */
  readonly into: string;
  /** A source's text as it shall be compiled; the path is relative to the clone. */
  readonly change?: (text: string, path: string) => string;
}

/**
 * Gives the tests the sources as modules that node loads by itself: vitest looks an imported function up at every call
 * of it, which takes a third of the time. In watch mode it keeps them, since it would see no change in what node loads, and
 * where clones share their packages, since they would share what was compiled as well.
 */
export function compiledSources({ into, change }: Compiling = { into: compiled }): Plugin {
  let isLeftToNode = false;
  return {
    name: 'compiled sources',
    enforce: 'pre',
    async configureVitest({ vitest }) {
      isLeftToNode = !vitest.config.watch && (into !== compiled || !lstatSync(packages).isSymbolicLink());
      if (isLeftToNode) await compileSources(into, change);
    },
    resolveId(wanted, importer) {
      if (!isLeftToNode || importer === undefined || !wanted.startsWith('.')) return undefined;
      return compiledFrom(resolve(dirname(importer), wanted), into);
    },
  };
}

/** Where a source was compiled to; undefined for what is none, and for one that is gone, of which an old file may lie there. */
function compiledFrom(path: string, into: string): string | undefined {
  const within = relative(sources, path);
  const isSource = !within.startsWith('..') && existsSync(path);
  return isSource ? join(into, asScript(within)) : undefined;
}

const asScript = (path: string): string => path.replace(/\.ts$/, '.js');

/** A file each, which changes only where its source did: another run may be loading them. */
async function compileSources(into: string, change: Compiling['change']): Promise<void> {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: readdirSync(sources, { recursive: true, encoding: 'utf8' })
      .filter((name) => /(?<!\.d)\.ts$|\.js$/.test(name))
      .map((name) => join(sources, name)),
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    outdir: into,
    outbase: sources,
    packages: 'external',
    plugins: [eachByItself, ...(change === undefined ? [] : [changedBy(change)])],
    sourcemap: 'inline',
    sourcesContent: false,
    logLevel: 'error',
    write: false,
  });
  for (const { path, text } of outputFiles) writeIfChanged(path, text);
  writeIfChanged(join(into, 'package.json'), '{ "type": "module" }\n');
}

/** What is not there is left to esbuild, which says so. */
const eachByItself: BuildPlugin = {
  name: 'each by itself',
  setup({ onResolve }) {
    onResolve({ filter: /^\./ }, ({ path, resolveDir }) =>
      existsSync(join(resolveDir, path)) ? { path: asScript(path), external: true } : undefined,
    );
  },
};

const changedBy = (change: (text: string, path: string) => string): BuildPlugin => ({
  name: 'changed',
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, ({ path }) => ({
      contents: change(readFileSync(path, 'utf8'), relative(root, path)),
      loader: 'ts',
    }));
  },
});

function writeIfChanged(path: string, text: string): void {
  if (existsSync(path) && readFileSync(path, 'utf8') === text) return;
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
