import fc from 'fast-check';

/** A length in tenths of a thousandth of an inch: exact in inches and, times 25.4, in millimetres. */
export type Tenths = number;

export type Unit = 'in' | 'mm';

export function lengthIn(unit: Unit, tenths: Tenths): string {
  const steps = unit === 'in' ? BigInt(tenths) : BigInt(tenths) * 254n;
  const decimals = unit === 'in' ? 4 : 5;
  const digits = (steps < 0n ? -steps : steps).toString().padStart(decimals + 1, '0');
  return `${steps < 0n ? '-' : ''}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

export interface RandomBlock {
  readonly measure: string;
  readonly instrument: string;
  readonly stations: boolean;
  readonly date: string | undefined;
  /** By position; two figures are two stations. */
  readonly at: Readonly<Record<string, readonly Tenths[]>>;
}

/** A session of a small engine with a band for each thing measured. */
export interface RandomShop {
  readonly stage: string;
  readonly blocks: readonly RandomBlock[];
  readonly limits: Readonly<Record<string, readonly [Tenths, Tenths]>>;
  readonly rule: 'simple' | 'guarded';
}

const POSITIONS = ['1', '2', '3'];

const block = (
  measure: string,
  instrument: string,
  middle: Tenths,
  spread: Tenths,
): fc.Arbitrary<RandomBlock> =>
  fc.boolean().chain((stations) =>
    fc.record({
      measure: fc.constant(measure),
      instrument: fc.constant(instrument),
      stations: fc.constant(stations),
      date: fc.constantFrom(undefined, '2026-02-02', '2026-02-03'),
      at: fc
        .tuple(
          ...POSITIONS.map(() =>
            fc.array(fc.integer({ min: middle - spread, max: middle + spread }), {
              minLength: stations ? 2 : 1,
              maxLength: stations ? 2 : 1,
            }),
          ),
        )
        .map((readings) => Object.fromEntries(readings.map((each, index) => [POSITIONS[index] ?? '', each]))),
    }),
  );

/** The same thing measured again by the same instrument: blocks in a tie, whatever they read. */
const severalOf = (of: fc.Arbitrary<RandomBlock>): fc.Arbitrary<RandomBlock[]> =>
  fc.array(of, { minLength: 1, maxLength: 3 });

const band = (middle: Tenths, spread: Tenths) =>
  fc
    .tuple(fc.integer({ min: 0, max: spread }), fc.integer({ min: 0, max: spread }))
    .map(([below, above]): readonly [Tenths, Tenths] => [middle - below, middle + above]);

export const randomShop: fc.Arbitrary<RandomShop> = fc.record({
  stage: fc.constantFrom('teardown', 'machined', 'trial', 'rebuild', 'service'),
  rule: fc.constantFrom('simple', 'guarded'),
  blocks: fc
    .tuple(
      severalOf(block('main_bearing_bore', 'bore', 32_507, 4)),
      severalOf(block('main_journal_diameter', 'mic', 32_478, 4)),
      severalOf(block('main_housing_bore', 'bore', 35_007, 4)),
      fc.tuple(block('main_shell_thickness', 'ball', 1250, 2)),
      severalOf(block('main_bearing_clearance', 'strip', 30, 10)),
    )
    .chain((all) => fc.subarray(all, { minLength: 1 }))
    .map((some) => some.flat()),
  limits: fc.record({
    main_bearing_clearance: band(30, 12),
    main_journal_diameter: band(32_478, 5),
    main_bearing_bore: band(32_507, 5),
    main_journal_taper: band(0, 4).map(([, max]): readonly [Tenths, Tenths] => [0, max]),
  }),
});

/** Its instruments carry their own units, so that they are the same in both shops. */
const REGISTER = `kind: instruments
instruments:
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  ball: { type: ball micrometer, resolution: 0.0001 in, max_error: 0.0002 in }
  strip: { type: gauging strip, marks: [0.001 in, 0.002 in, 0.003 in, 0.004 in, 0.006 in] }
`;

/** Blocks of the session's YAML, one text each, in the order given. */
export const blockTexts = ({ blocks }: RandomShop, unit: Unit): readonly string[] =>
  blocks.map(({ measure, instrument, stations, date, at }) => {
    const readings = Object.entries(at).map(([position, figures]) => {
      const texts = figures.map((tenths) => lengthIn(unit, tenths));
      return `${position}: ${texts.length === 1 ? texts[0] : `[${texts.join(', ')}]`}`;
    });
    return `- { measure: ${measure}, with: ${instrument}${stations ? ', stations: [front, rear]' : ''}${date === undefined ? '' : `, date: ${date}`}, at: { ${readings.join(', ')} } }`;
  });

export function filesOf(shop: RandomShop, unit: Unit): Record<string, string> {
  const limits = Object.entries(shop.limits).map(
    ([id, [min, max]]) => `  ${id}: { new: { min: ${lengthIn(unit, min)}, max: ${lengthIn(unit, max)} } }`,
  );
  return {
    'shop.yaml': `kind: shop\ndecision_rule: ${shop.rule}\n`,
    'instruments.yaml': REGISTER,
    'e/engine.yaml': `kind: engine\nname: A\nunits: { length: ${unit} }\nlayout: { mains: 3 }\n`,
    'e/limits.yaml': `kind: limits\nsource: Invented.\nlimits:\n${limits.join('\n')}\n`,
    'e/session.yaml': `kind: session\nstage: ${shop.stage}\ndate: 2026-02-03\nreadings:\n${blockTexts(
      shop,
      unit,
    )
      .map((text) => `  ${text}\n`)
      .join('')}`,
  };
}
