import { describe, expect, it } from 'vitest';
import { type Fits, fitsOf } from '../../../src/plan/fit/fits.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf, lengthIn } from '../planOf.ts';

const filesOf = (limits: string, stock: string, blocks: string): Files => ({
  'shop.yaml':
    'kind: shop\nunits: { length: mm }\ncharacteristics:\n  lash_bucket_thickness: { label: lash bucket thickness, positions: valve, quantity: length }\n',
  'stock.yaml': `kind: stock\n${stock}`,
  'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { cylinders: 2, valves: [intake, exhaust] }\n`,
  'e/limits.yaml': limits,
  // Read twice: what lies far from the others might be a slip.
  'e/session.yaml': sessionOf('trial', `${blocks}\n${blocks}`),
});

const chosenFrom = (files: Files): Fits => fitsOf(contextOf(files));

/** In micrometres, printed in millimetres. */
const mm = (micrometres: number): string => (micrometres / 1000).toFixed(3);

interface GasketTable {
  readonly source: string;
  /** By grade: from how far to how far the highest piston stands out, and how thick the gasket is; in micrometres. */
  readonly grades: Readonly<Record<string, readonly [from: number, to: number, thickness: number]>>;
}

const GASKETS: readonly GasketTable[] = [
  {
    source: 'Isuzu NKR, 4JB1, p. 133: borders are shared, and the thicker one has them',
    grades: { A: [758, 813, 1600], B: [813, 859, 1650], C: [859, 914, 1700] },
  },
  {
    source: 'Suzuki XL-7 with the RHZ engine, p. 6A3-39: thickness when tightened, the least of each',
    grades: {
      1: [470, 604, 1240],
      2: [605, 654, 1290],
      3: [655, 704, 1340],
      4: [705, 754, 1390],
      5: [755, 830, 1440],
    },
  },
];

describe.each(GASKETS.map((table) => [table.source, table] as const))('head gaskets, %s', (_, { grades }) => {
  const rows = Object.entries(grades);
  const limits = limitsOf(
    'piston_protrusion: { new: 0.400 to 1.000 }',
    `gasket_choice:\n${rows
      .map(
        ([code, [from, to, thickness]]) =>
          `  - { code: "${code}", protrusion: ${mm(from)} to ${mm(to)}, thickness: ${mm(thickness)} }\n`,
      )
      .join('')}`,
  );
  const stock = `gaskets: [${rows.map(([code, [, , thickness]]) => `{ code: "${code}", thickness: ${mm(thickness)}, count: 1 }`).join(', ')}]\n`;
  const gasketFor = (protrusion: number): readonly unknown[] => {
    // Of each cylinder the mean of two places counts, and of all cylinders the largest mean.
    const at = `{ 1: [0.450, 0.450], 2: [${mm(protrusion + 10)}, ${mm(protrusion - 10)}] }`;
    const { gasket } = chosenFrom(
      filesOf(limits, stock, `- { measure: piston_protrusion, stations: [front, rear], at: ${at} }`),
    );
    const chosen = gasket?.gasket;
    return [chosen?.code, chosen?.thickness && lengthIn('mm', chosen.thickness), gasket?.free];
  };

  it.each(rows)(
    'grade %s is chosen from the least to the greatest of its band',
    (code, [from, to, thickness]) => {
      const isShared = rows.some(([, [least]]) => least === to);
      const last = isShared ? to - 1 : to;
      for (const protrusion of [from, Math.round((from + to) / 2), last])
        expect(gasketFor(protrusion), mm(protrusion)).toEqual([code, mm(thickness), 1]);
    },
  );
});

describe('shims under liners, Mercury D4.2L, p. 3A-140: .01 to .06 mm proud', () => {
  const SHIMS = [
    ['S15', 140, 90, 150],
    ['S20', 190, 140, 200],
    ['S23', 220, 170, 230],
  ] as const;

  it.each(SHIMS)('%s is chosen for a liner that lies from %i to %i µm deep', (code, deepest, least) => {
    const stock = SHIMS.map(
      ([each, , , thickness]) => `{ code: ${each}, thickness: ${mm(thickness)}, count: 2 }`,
    );
    const read = `[-${mm(deepest)}, -${mm(least)}]`;
    const { thicknesses } = chosenFrom(
      filesOf(
        limitsOf('liner_protrusion: { new: 0.010 to 0.060 }'),
        `liner_shims: [${stock.join(', ')}]\n`,
        `- { measure: liner_protrusion, stations: [front, rear], at: { 1: ${read}, 2: ${read} } }`,
      ),
    );
    expect(
      thicknesses.flatMap(({ places }) =>
        places.map(({ code: chosen, becomes }) => [
          chosen,
          becomes && lengthIn('mm', becomes.least),
          becomes && lengthIn('mm', becomes.greatest),
        ]),
      ),
    ).toEqual([
      [code, '0.010', '0.060'],
      [code, '0.010', '0.060'],
    ]);
  });
});

describe('lash buckets of a maker who sells 35 of them, from 5.060 to 5.740 by .020 mm', () => {
  const SIZES = Array.from({ length: 35 }, (_, index) => 5060 + 20 * index);
  /** As they are sold: No. 06 is 5.060, No. 42 is 5.420. */
  const numberOf = (size: number): string => String((size - 5000) / 10).padStart(2, '0');
  const STOCK = `lash_buckets: [${SIZES.map((size) => `{ code: "${numberOf(size)}", thickness: ${mm(size)}, count: 2 }`).join(', ')}]\n`;

  interface Valve {
    readonly fitted: number;
    readonly lash: number;
  }

  function bucketFor({ fitted, lash }: Valve, band: string): string | undefined {
    const at = (figure: number): string => `{ 1: { intake: ${mm(figure)} } }`;
    const blocks = [
      `- { measure: valve_lash_cold, at: ${at(lash)} }`,
      `- { measure: lash_bucket_thickness, at: ${at(fitted)} }`,
    ];
    const files = filesOf(limitsOf(`valve_lash_cold: { new: ${band} }`), STOCK, blocks.join('\n'));
    return chosenFrom(files).thicknesses[0]?.places[0]?.code;
  }

  it.each([
    [
      'Scion xB 2008: 5.250 fitted, .40 read and .24 wanted; of two as near the thicker',
      5250,
      400,
      '0.190 to 0.290',
      '42',
    ],
    [
      'the same maker’s exhaust: 5.340 fitted, .510 read and .38 to .48 wanted',
      5340,
      510,
      '0.380 to 0.480',
      '42',
    ],
  ])('%s, takes the bucket of the table', (_, fitted, lash, band, number) => {
    expect(bucketFor({ fitted, lash }, band)).toBe(number);
  });

  it('each is chosen for a valve that has run too far out by what it is thicker', () => {
    for (const size of SIZES.filter((each) => each - 5060 > 50))
      expect(bucketFor({ fitted: 5060, lash: 240 + size - 5060 }, '0.190 to 0.290')).toBe(numberOf(size));
  });

  // A lash that is not read small enough to be out asks for no bucket, and none is below nought.
  it('each is chosen for a valve that is too tight by what it is thinner', () => {
    for (const size of SIZES.filter((each) => each < 5740 - 50 && each > 5740 - 240))
      expect(bucketFor({ fitted: 5740, lash: 240 + size - 5740 }, '0.190 to 0.290')).toBe(numberOf(size));
  });
});
