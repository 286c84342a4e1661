/** The rows of like things along which an engine is measured. */
export const AXES = [
  'main',
  'crankpin',
  'cylinder',
  'ring',
  'valve',
  'cam bearing',
  'lobe',
  'bank',
  'gear',
  'step',
  'engine',
] as const;

export type Axis = (typeof AXES)[number];

/** What is counted anew on each thing of another axis: a ring is a ring of some cylinder. */
export const HOLDER: Readonly<Partial<Record<Axis, Axis>>> = { ring: 'cylinder', valve: 'cylinder' };
