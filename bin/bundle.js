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
 * Loading string-width makes a segmenter and reads all emoji, 25 ms and a third of node's own start; most checks never
 * ask it anything. `require` of a bundled module runs it only when it is called.
 */
const lazyStringWidth = {
  name: 'lazy-string-width',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^string-width$/ }, ({ path, kind }) =>
      kind === 'import-statement' ? { path, namespace: 'lazy' } : undefined,
    );
    onLoad({ filter: /.*/, namespace: 'lazy' }, () => ({
      contents: "let width; export default (text) => (width ??= require('string-width').default)(text);",
      resolveDir: root,
    }));
  },
};

/** What runs in the end. */
export const PROGRAM = {
  ...BUNDLE,
  plugins: [lazyStringWidth],
  // Some packages are CommonJS and ask for Node's own modules by `require`.
  banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
};
