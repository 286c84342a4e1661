import fc, { type RunDetails } from 'fast-check';
import { SEED } from './propertyRuns.ts';
import { tried } from './tries.ts';

/** Counts what was tried, and fails as fast-check does by itself: with the seed and the smallest input. */
function counted(details: RunDetails<unknown>): void {
  tried(details.numRuns);
  if (details.failed) throw new Error(fc.defaultReportMessage(details), { cause: details.errorInstance });
}

fc.configureGlobal({ seed: SEED, reporter: counted });
