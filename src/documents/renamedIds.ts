interface RenamedId {
  /** What is measured. */
  readonly now: string;
  /** How a reading or a limit of it is written, and how a formula names it. */
  readonly example: string;
  readonly inFormulas: string;
}

/** Ids of earlier documents that are written in another way now. */
export const RENAMED_IDS: ReadonlyMap<string, RenamedId> = new Map([
  [
    'top_ring_end_gap',
    {
      now: 'ring_end_gap of the top ring',
      example: 'ring_end_gap, at: { 1: { top: … } }',
      inFormulas: 'ring_end_gap[top]',
    },
  ],
  [
    'second_ring_end_gap',
    {
      now: 'ring_end_gap of the second ring',
      example: 'ring_end_gap, at: { 1: { second: … } }',
      inFormulas: 'ring_end_gap[second]',
    },
  ],
  [
    'oil_ring_end_gap',
    {
      now: 'ring_end_gap of the oil ring',
      example: 'ring_end_gap, at: { 1: { oil: … } }',
      inFormulas: 'ring_end_gap[oil]',
    },
  ],
]);
