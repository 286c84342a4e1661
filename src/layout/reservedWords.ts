/** The keys that give a reading its shape at a position. */
export const READING_WORDS = ['value', 'repeat', 'go', 'no_go', 'was', 'why', 'note'] as const;

/** Halves of a pair of shells, and ends of a strip: what a position may be read at without a grid. */
export const STATION_WORDS = ['upper', 'lower', 'front', 'rear'] as const;

/** The keys under which limits stand, in general and at positions. */
export const LIMIT_WORDS = [
  'target',
  'new',
  'wear',
  'last_size',
  'largest_bore',
  'least_thickness',
  'sizes',
  'usual',
  'at',
  'per',
  'by',
  'from',
  'temperature',
  'source',
] as const;

/** A position of such a name could not be told from what stands at it. The ends of a crankshaft are called so as well. */
export const RESERVED: ReadonlySet<string> = new Set<string>([
  ...READING_WORDS,
  ...LIMIT_WORDS,
  'upper',
  'lower',
  'min',
  'max',
  'stations',
  'directions',
]);
