/** Ids of earlier documents that are written in another way now: what is measured, and an example of how. */
export const RENAMED_IDS: ReadonlyMap<string, { readonly now: string; readonly example: string }> = new Map([
  [
    'top_ring_end_gap',
    { now: 'ring_end_gap of the top ring', example: 'ring_end_gap, at: { 1: { top: … } }' },
  ],
  [
    'second_ring_end_gap',
    { now: 'ring_end_gap of the second ring', example: 'ring_end_gap, at: { 1: { second: … } }' },
  ],
  [
    'oil_ring_end_gap',
    { now: 'ring_end_gap of the oil ring', example: 'ring_end_gap, at: { 1: { oil: … } }' },
  ],
]);
