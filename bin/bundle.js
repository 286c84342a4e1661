import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** How everything is bundled. */
export const BUNDLE = {
  absWorkingDir: root,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  logLevel: 'error',
  // The package gives node its CommonJS build, of which no unused part can be left out.
  alias: { yaml: './node_modules/yaml/browser/dist/index.js' },
};

/**
 * What takes long to load and is rarely or never asked for. `require` of a bundled module runs it only when called.
 * - string-width makes a segmenter and reads all emoji: 25 ms, a third of node's own start.
 * - chalk looks at the terminal as it loads, though we tell it what to do.
 * - node:process as a module opens all three standard streams, where the global of that name does not.
 * - commander may start other programs, and ours has none to start.
 */
const LIGHTER = new Map([
  [
    'string-width',
    `const { ONE_COLUMN_EACH } = require('./src/output/terminal/oneColumnEach.ts');
let width;
const widthOf = (text) => (ONE_COLUMN_EACH.test(text) ? text.length : (width ??= require('string-width').default)(text));
module.exports = Object.assign(widthOf, { default: widthOf });`,
  ],
  ['chalk', "export function Chalk(options) { return new (require('chalk').Chalk)(options); }"],
  ['node:process', 'module.exports = process;'],
  ['node:child_process', 'module.exports = {};'],
]);

const lighter = {
  name: 'lighter',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^(string-width|chalk|node:process|node:child_process)$/ }, (wanted) => {
      const { path, namespace, importer } = wanted;
      // Only commander is to have no child processes: ours starts git.
      const isOurs = path === 'node:child_process' && !importer.includes('/commander/');
      return namespace === 'lighter' || isOurs ? undefined : { path, namespace: 'lighter' };
    });
    onLoad({ filter: /.*/, namespace: 'lighter' }, ({ path }) => ({
      contents: LIGHTER.get(path),
      resolveDir: root,
    }));
  },
};

/** Pages are written by a bundle of their own, which `report` alone loads: no other start pays for it. */
const LATE = /\/output\/page\/page\.ts$/;

const late = {
  name: 'late',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: LATE }, ({ path, kind }) =>
      kind === 'entry-point' ? undefined : { path: path.replace(/.*\//, ''), namespace: 'late' },
    );
    onLoad({ filter: /.*/, namespace: 'late' }, ({ path }) => ({
      contents: `module.exports = process.getBuiltinModule('node:module').createRequire(__filename)('./${path.replace('.ts', '.cjs')}');`,
    }));
  },
};

/** What runs in the end. */
export const PROGRAM = {
  ...BUNDLE,
  plugins: [lighter, late],
  legalComments: 'external',
  // A third less to read at every start, 6 ms; names stay, so that a stack can be read.
  minifyWhitespace: true,
  minifySyntax: true,
};

/** As scripts: as modules they would start some milliseconds later. */
export const SCRIPTS = {
  ...PROGRAM,
  format: 'cjs',
  define: { 'import.meta.dirname': '__dirname' },
  outExtension: { '.js': '.cjs' },
  // In ASCII alone, so that it is read without being decoded.
  charset: 'ascii',
};
