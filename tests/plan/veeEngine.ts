import { type Files, limitsOf } from '../shopOf.ts';

/** An invented vee of six with two heads, read in millimetres. */
export const veeEngine = (limits: string, sessions: Files): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: mm, pressure: bar, mass: g }\n',
  'e/engine.yaml': `kind: engine
name: Vee of six
layout:
  cylinders: 6
  mains: 4
  crankpins: { 1: [1, 4], 2: [2, 5], 3: [3, 6] }
  banks: { L: [1, 2, 3], R: [4, 5, 6] }
  valves: [I, E]
`,
  'e/limits.yaml': limitsOf(limits),
  ...sessions,
});
