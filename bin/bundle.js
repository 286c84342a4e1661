import { fileURLToPath } from 'node:url';

/** How everything is bundled. */
export const BUNDLE = {
  absWorkingDir: fileURLToPath(new URL('..', import.meta.url)),
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  logLevel: 'error',
};

/** What runs in the end. */
export const PROGRAM = {
  ...BUNDLE,
  // Some packages are CommonJS and ask for Node's own modules by `require`.
  banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
};
