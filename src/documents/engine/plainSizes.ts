/** Sizes of an engine that are not characteristics, with what a schema says of them; all lengths. */
export const PLAIN_SIZES = {
  bore: { title: 'Bore', description: 'Nominal bore of the cylinders.' },
  stroke: { title: 'Stroke', description: 'Nominal stroke.' },
  main_bearing_length: {
    title: 'Main bearing length',
    description: 'How long a main bearing carries along its journal, for the oil film.',
  },
  rod_bearing_length: {
    title: 'Rod bearing length',
    description: 'How long a rod bearing carries along its crankpin, for the oil film.',
  },
  cam_bearing_length: {
    title: 'Cam bearing length',
    description: 'How long a cam bearing carries along its journal, for the oil film.',
  },
} as const;

export type PlainSize = keyof typeof PLAIN_SIZES;

export const PLAIN_SIZE_NAMES: readonly string[] = Object.keys(PLAIN_SIZES);

export const isPlainSize = (name: string): boolean => Object.hasOwn(PLAIN_SIZES, name);
