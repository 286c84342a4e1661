import { configDefaults, defineConfig } from 'vitest/config';
import { mutantSources } from './bin/mutate/mutantSources.js';
import { compiledSources } from './tests/compiledSources.ts';
import { longTests } from './tests/longTests.ts';

/** `--mode long` tries every case of the properties, in the tests that have more than `npm test` tries; `--mode browser` opens what was written in a browser. */
export default defineConfig(({ mode }) => ({
  plugins: [compiledSources(mode === 'mutants' ? mutantSources() : undefined)],
  test: {
    ...(mode === 'browser'
      ? { include: ['tests/browser/**/*.test.ts'] }
      : { exclude: [...configDefaults.exclude, 'tests/browser/**'] }),
    ...(mode === 'long' ? { include: [...longTests()] } : {}),
    // Only for what would never end: how busy a machine is shall not matter.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // A test changes nothing that a later file sees, so each worker loads the sources once: half of the time went there.
    isolate: false,
    maxWorkers: '100%',
    // Nearly all that a test makes is soon let go, and clearing up costs less where there is room for more of it.
    execArgv: ['--max-semi-space-size=64', '--enable-source-maps'],
    env: { PROPERTY_RUNS: mode === 'long' ? 'all' : 'some' },
    globalSetup: 'tests/wholeRun.ts',
    setupFiles: ['tests/plainSettings.ts', 'tests/everyProperty.ts'],
  },
}));
