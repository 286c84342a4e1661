import { expect, test } from 'vitest';
import type { Bands, SideLimit } from '../../../src/checks/judge/sideLimit.ts';
import { rangeOfBands } from '../../../src/checks/slips/plausibleSizes.ts';
import { startOfFile } from '../../../src/diagnostic/place.ts';
import type { BandName } from '../../../src/documents/limits/bands.ts';
import { parseDecimal } from '../../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../../src/quantity/units.ts';

const limit = (text: string | undefined, band: BandName): SideLimit | undefined =>
  text === undefined
    ? undefined
    : {
        amount: toBase(parseDecimal(text), unitNamed('in')),
        written: text,
        band,
        place: startOfFile('limits.yaml'),
      };

const bands = (
  fresh: readonly (string | undefined)[],
  wear: readonly (string | undefined)[] = [],
): Bands => ({
  new: { min: limit(fresh[0], 'new'), max: limit(fresh[1], 'new') },
  wear: { min: limit(wear[0], 'wear'), max: limit(wear[1], 'wear') },
});

test.each([
  ['a journal, twice the way to its wear limit', bands(['3.2475', '3.2485'], ['3.2465']), '3.2455', '3.2495'],
  ['a bore, the other way', bands(['4.1250', '4.1260'], [undefined, '4.1310']), '4.1240', '4.1360'],
  ['a wear limit that allows no wear', bands(['3.2475', '3.2485'], ['3.2475']), '3.2470', '3.2495'],
  ['a clearance without a wear limit, four widths', bands(['0.0020', '0.0038']), '-0.0052', '0.0110'],
  [
    'end play, up to twice what is allowed',
    bands(['0.006', '0.013'], [undefined, '0.018']),
    '-0.0010',
    '0.0360',
  ],
  ['a part without a wear limit, 0.3 mm at least', bands(['1.0000', '1.0010']), '0.9882', '1.0128'],
])('%s', (_, of, from, to) => {
  const range = rangeOfBands(of);
  expect(((range.from ?? 0) / 254e6).toFixed(4)).toBe(from);
  expect(((range.to ?? 0) / 254e6).toFixed(4)).toBe(to);
});

test('a side without a limit stays open', () => {
  expect(rangeOfBands(bands([], [undefined, '0.018'])).from).toBeUndefined();
});
