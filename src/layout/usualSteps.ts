import type { Layout } from './layout.ts';

/** The steps of an assembly after which an engine is turned: the crankshaft alone, and each piston as it goes in. */
export const usualSteps = (layout: Layout): readonly string[] => [
  'crankshaft',
  ...layout.namesAlong('cylinder').map((cylinder) => `piston ${cylinder}`),
];
