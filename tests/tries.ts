import { TestRunner } from 'vitest';

declare module '@vitest/runner' {
  interface TaskMeta {
    /** How many inputs a test tried beyond being one itself. */
    tried?: number;
  }
}

/** Says of the test that runs that it tried so many inputs: `npm run attack` adds them up. */
export function tried(count: number): void {
  const meta = TestRunner.getCurrentTest()?.meta;
  if (meta !== undefined) meta.tried = (meta.tried ?? 0) + count;
}
