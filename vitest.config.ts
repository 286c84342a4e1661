import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // Properties run thousands of cases: on a busy machine of two cores they need far more than the usual five seconds.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // A test changes nothing that a later file sees, so each worker loads the sources once: half of the time went there.
    isolate: false,
    maxWorkers: '100%',
  },
});
