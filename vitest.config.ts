import { defineConfig } from 'vitest/config';

// Properties run thousands of cases: on a busy machine of two cores they need far more than the usual five seconds.
export default defineConfig({ test: { testTimeout: 120_000, hookTimeout: 120_000 } });
