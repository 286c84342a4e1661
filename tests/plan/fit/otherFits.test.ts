import { describe, expect, it } from 'vitest';
import { fitsOf, isShort } from '../../../src/plan/fit/fits.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf, lengthIn } from '../planOf.ts';

const shop = (limits: string, stock: string, blocks: string, more: Files = {}): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
  'stock.yaml': `kind: stock\n${stock}`,
  'e/engine.yaml':
    'kind: engine\nname: Pump\nlayout: { cylinders: 3, mains: 1, crankpins: 3, valves: [intake, exhaust] }\n',
  'e/limits.yaml': limits,
  'e/session.yaml': sessionOf('trial', blocks),
  ...more,
});

function fitsIn(files: Files) {
  const fits = fitsOf(contextOf(files));
  return { ...fits, short: isShort(fits) };
}

const mm = (amount: Parameters<typeof lengthIn>[1] | undefined): string | undefined =>
  amount && lengthIn('mm', amount);

/** The washer of each side is so much thicker: the end play moves by twice that. */
describe('thrust washers for the end play', () => {
  const LIMITS = limitsOf('crankshaft_end_play: { new: 0.10 to 0.20, wear: { max: 0.30 } }');
  const STOCK = `thrust_washers:
  - { code: TW, count: 2 }
  - { code: T10, size: 0.10 over, count: 2 }
  - { code: T05, size: 0.05 over, count: 2 }
`;
  const played = (read: string, stock = STOCK, limits = LIMITS, more = ''): Files =>
    shop(limits, stock, `- { measure: crankshaft_end_play, value: ${read} }`, {
      'e/session.yaml': sessionOf('trial', `- { measure: crankshaft_end_play, value: ${read} }`, more),
    });
  const chosenFor = (files: Files) => {
    const { washers, short } = fitsIn(files);
    const chosen = washers?.chosen;
    return {
      wanted: washers && [washers.wanted.min, washers.wanted.middle, washers.wanted.max].map(mm),
      read: mm(washers?.read),
      chosen: chosen && [chosen.washer.code, mm(chosen.endPlay)],
      short,
    };
  };
  const wanted = ['0.100', '0.150', '0.200'];

  it.each([
    ['0.260', ['T05', '0.160']],
    ['0.340', ['T10', '0.140']],
    // On the limit is inside; a hundredth past it is not.
    ['0.400', ['T10', '0.200']],
    ['0.150', ['TW', '0.150']],
  ])('of %s read are those that come nearest to the middle', (read, chosen) => {
    expect(chosenFor(played(read))).toEqual({ wanted, read, chosen, short: false });
  });

  it('are the nearest, wherever on the shelf they stand', () => {
    const before = STOCK.replace('\n', '\n  - { code: T08, size: 0.08 over, count: 2 }\n');
    expect(chosenFor(played('0.260', before)).chosen).toEqual(['T05', '0.160']);
  });

  it('are counted from those that are fitted', () => {
    const fitted = 'fitted: { thrust_washer: { size: 0.05 over } }\n';
    expect(chosenFor(played('0.240', STOCK, LIMITS, fitted)).chosen).toEqual(['T10', '0.140']);
  });

  it('are short where none brings it inside', () => {
    expect(chosenFor(played('0.410'))).toEqual({ wanted, read: '0.410', chosen: undefined, short: true });
  });

  const none = { wanted: undefined, read: undefined, chosen: undefined, short: false };
  it.each([
    ['the shelf has none', played('0.260', 'pistons: []\n')],
    [
      'limits of new parts are not stated on both sides',
      played('0.260', STOCK, LIMITS.replace('0.10 to 0.20', '{ max: 0.20 }')),
    ],
    ['the end play was left out', played('~')],
    ['the end play was not read', shop(LIMITS, STOCK, '- { measure: cylinder_bore, at: { 1: 80.000 } }')],
  ])('are not chosen where %s', (_, files) => {
    expect(chosenFor(files)).toEqual(none);
  });
});

describe('the head gasket', () => {
  // The bands of Isuzu NKR, 4JB1, p. 133.
  const BANDS = `gasket_choice:
  - { code: A, protrusion: 0.758 to 0.813, thickness: 1.60 }
  - { code: B, protrusion: 0.813 to 0.859, thickness: 1.65 }
`;
  const STOCK = `gaskets:
  - { code: A, thickness: 1.60, count: 4 }
  - { code: B, thickness: 1.65, count: 3 }
  - { code: B, thickness: 1.65, count: 2 }
liner_shims: [{ code: B, thickness: 0.10, count: 9 }]
`;
  const standing = (at: string, bands = BANDS): Files =>
    shop(
      limitsOf('cylinder_bore: { new: 80.000 to 80.020 }', bands),
      STOCK,
      `- { measure: piston_protrusion, at: { ${at} } }\n- { measure: cylinder_bore, at: { 1: 80.010, 2: 80.010, 3: 80.010 } }`,
    );
  const chosenFor = (files: Files) => {
    const { gasket, short } = fitsIn(files);
    return gasket && [gasket.position.name, mm(gasket.protrusion), gasket.gasket?.code, gasket.free, short];
  };

  it.each([
    ['1: 0.820, 2: 0.800, 3: 0.790', ['1', '0.820', 'B', 5, false]],
    ['1: 0.790, 2: 0.800, 3: 0.820', ['3', '0.820', 'B', 5, false]],
    ['1: 0.790, 2: 0.805, 3: 0.800', ['2', '0.805', 'A', 4, false]],
    ['1: 0.800, 2: 0.800, 3: 0.800', ['1', '0.800', 'A', 4, false]],
    ['1: 0.790, 2: 0.870, 3: 0.800', ['2', '0.870', undefined, 0, true]],
  ])('goes by the piston that stands highest: %s', (at, chosen) => {
    expect(chosenFor(standing(at))).toEqual(chosen);
  });

  it('is not chosen without bands, nor where no piston was read', () => {
    expect(chosenFor(standing('1: 0.820', ''))).toBeUndefined();
    expect(
      chosenFor(
        shop(
          limitsOf('cylinder_bore: { new: 80.000 to 80.020 }', BANDS),
          STOCK,
          '- { measure: cylinder_bore, at: { 1: 80.010 } }',
        ),
      ),
    ).toBeUndefined();
  });
});

describe('shims and buckets', () => {
  const thicknessesIn = (files: Files) => {
    const { thicknesses, short } = fitsIn(files);
    return {
      short,
      fits: thicknesses.map(({ list, of, wanted, places }) => ({
        list,
        of: of.id,
        wanted: [wanted.min, wanted.middle, wanted.max].map(mm),
        places: places.map(({ position, read, ideal, code, becomes }) =>
          [position.name, mm(read), mm(ideal), code, mm(becomes?.least), mm(becomes?.greatest)].join(' '),
        ),
      })),
    };
  };

  describe('under liners', () => {
    // Mercury D4.2L, p. 3A-140: the liner stands .01 to .06 proud.
    const LIMITS = limitsOf('liner_protrusion: { new: 0.010 to 0.060, wear: { min: 0.000 } }');
    const shims = (count: number): string =>
      `liner_shims: [{ code: S15, thickness: 0.15, count: 1 }, { code: S20, thickness: 0.20, count: ${count} }]\nlash_buckets: [{ code: L15, thickness: 0.145, count: 9 }]\n`;
    // Read twice: one that is far from the others might be a slip.
    const BLOCK =
      '- { measure: liner_protrusion, stations: [front, rear], at: { 1: [-0.140, -0.090], 2: [-0.130, -0.130], 3: [0.030, 0.040] } }\n'.repeat(
        2,
      );
    const wanted = ['0.010', '0.035', '0.060'];

    it('go to those that are out, by both ends of what was read', () => {
      expect(thicknessesIn(shop(LIMITS, shims(2), BLOCK.replaceAll('-0.130', '-0.165')))).toEqual({
        short: false,
        fits: [
          {
            list: 'liner_shims',
            of: 'liner_protrusion',
            wanted,
            places: ['1 -0.115 0.150 S15 0.010 0.060', '2 -0.165 0.200 S20 0.035 0.035'],
          },
        ],
      });
    });

    it('go to those that are worn', () => {
      const worn = '- { measure: liner_protrusion, at: { 1: 0.005, 2: 0.030, 3: 0.030 } }';
      const thin = 'liner_shims: [{ code: S03, thickness: 0.03, count: 1 }]\n';
      const files = shop(LIMITS, thin, worn, { 'e/session.yaml': sessionOf('teardown', worn) });
      expect(thicknessesIn(files).fits[0]?.places).toEqual(['1 0.005 0.030 S03 0.035 0.035']);
    });

    it('are short where they do not do for all', () => {
      expect(thicknessesIn(shop(LIMITS, shims(2), BLOCK))).toEqual({
        short: true,
        fits: [
          {
            list: 'liner_shims',
            of: 'liner_protrusion',
            wanted,
            places: ['1 -0.115 0.150 S15 0.010 0.060', '2 -0.130 0.165   '],
          },
        ],
      });
    });

    it('are not chosen where nothing is out', () => {
      const inside = '- { measure: liner_protrusion, at: { 1: 0.030, 2: 0.030, 3: 0.030 } }';
      expect(thicknessesIn(shop(LIMITS, shims(2), inside))).toEqual({ short: false, fits: [] });
    });

    it('are short where none are on the shelf', () => {
      const { short, fits } = thicknessesIn(shop(LIMITS, 'pistons: []\n', BLOCK));
      expect(short).toBe(true);
      expect(fits[0]?.places).toEqual(['1 -0.115 0.150   ', '2 -0.130 0.165   ']);
    });
  });

  describe('for a valve lash', () => {
    // Scion xB 2008, valve clearance (W10): .40 measured, .24 wanted, 5.250 fitted.
    const limits = (lash: string) => limitsOf(`${lash}: { new: 0.19 to 0.29 }`);
    const STOCK =
      'lash_buckets: [{ code: "40", thickness: 5.400, count: 3 }, { code: "42", thickness: 5.420, count: 3 }]\nliner_shims: [{ code: S, thickness: 5.410, count: 3 }]\n';
    const OWN =
      'characteristics:\n  lash_bucket_thickness: { label: lash bucket thickness, positions: valve, quantity: length }\n';
    const read = (fitted: string, lash = 'valve_lash_cold'): Files =>
      shop(
        limits(lash),
        STOCK,
        `- { measure: ${lash}, at: { 1: { intake: 0.40, exhaust: 0.24 }, 2: { intake: 0.24, exhaust: 0.24 }, 3: { intake: 0.24, exhaust: 0.24 } } }\n${fitted}`,
        { 'shop.yaml': `kind: shop\nunits: { length: mm }\n${OWN}` },
      );

    it.each(['valve_lash_cold', 'valve_lash_hot'])(
      'are chosen for %s by the bucket that is fitted',
      (lash) => {
        expect(
          thicknessesIn(
            read('- { measure: lash_bucket_thickness, at: { 1: { intake: 5.250, exhaust: 5.300 } } }', lash),
          ),
        ).toEqual({
          short: false,
          fits: [
            {
              list: 'lash_buckets',
              of: lash,
              wanted: ['0.190', '0.240', '0.290'],
              places: ['1 intake 0.400 5.410 42 0.230 0.230'],
            },
          ],
        });
      },
    );

    it('are not chosen where nobody read that bucket', () => {
      expect(
        thicknessesIn(read('- { measure: lash_bucket_thickness, at: { 1: { exhaust: 5.300 } } }')).fits,
      ).toEqual([]);
    });
  });
});
