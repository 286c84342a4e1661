import fc from 'fast-check';

/** Numbers spread evenly: `fc.double` goes by their bits, so that nearly all from nought to one lie next to nought. */
export const evenly = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1e9 }).map((part) => min + ((max - min) * part) / 1e9);
