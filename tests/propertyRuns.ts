/** Of every property and every sample, so that a failure comes again: `npm run attack` asks for others. */
export const SEED = Number(process.env.PROPERTY_SEED ?? 20260203);

/** `npm run test:long` tries every case that is worth trying, `npm test` a tenth of them. */
export const isLong = process.env.PROPERTY_RUNS === 'all';

/** How many of something that is made up: all, or few. */
export const some = (all: number, few = Math.min(all, Math.max(100, all / 10))): number =>
  isLong ? all : few;

export const runs = (all: number, few?: number): { readonly numRuns: number } => ({
  numRuns: some(all, few),
});
