import fc from 'fast-check';
import { type Drawn, drawnLayout } from '../layout/someLayouts.ts';
import { lengthIn, type Tenths } from './randomShop.ts';

/** Along which axes something is measured: the names of a position in the order of the axes. */
type At = 'main' | 'crankpin' | 'cylinder' | 'ring' | 'valve';

interface Measured {
  readonly id: string;
  readonly at: At;
  readonly instrument: string;
  readonly middle: Tenths;
  readonly spread: Tenths;
  /** Read on two halves of a pair of shells. */
  readonly halves?: true;
}

/** Bearings, cylinders, rings and valves, and two figures of the shop's own across positions. */
const MEASURED: readonly Measured[] = [
  { id: 'main_journal_diameter', at: 'main', instrument: 'mic', middle: 29_998, spread: 12 },
  { id: 'main_shell_thickness', at: 'main', instrument: 'ball', middle: 1_247, spread: 8, halves: true },
  { id: 'main_bearing_bore', at: 'main', instrument: 'bore', middle: 30_023, spread: 12 },
  { id: 'crankpin_diameter', at: 'crankpin', instrument: 'mic', middle: 24_997, spread: 10 },
  { id: 'rod_shell_thickness', at: 'cylinder', instrument: 'ball', middle: 1_247, spread: 8, halves: true },
  { id: 'rod_bearing_bore', at: 'cylinder', instrument: 'bore', middle: 25_022, spread: 10 },
  { id: 'cylinder_bore', at: 'cylinder', instrument: 'bore', middle: 41_256, spread: 14 },
  { id: 'piston_diameter', at: 'cylinder', instrument: 'mic', middle: 41_206, spread: 10 },
  { id: 'ring_end_gap', at: 'ring', instrument: 'feeler', middle: 180, spread: 90 },
  { id: 'valve_lash', at: 'valve', instrument: 'feeler', middle: 110, spread: 15 },
];

const LIMITS = `  main_journal_diameter: { new: 2.9990 to 3.0005, wear: { min: 2.9988 } }
  main_shell_thickness: { new: 0.1242 to 0.1251, wear: { min: 0.1240 } }
  main_bearing_bore: { new: 3.0012 to 3.0034 }
  main_bearing_clearance: { new: 0.0018 to 0.0035, wear: { max: 0.0040 } }
  crankpin_diameter: { new: 2.4990 to 2.5004, wear: { min: 2.4988 } }
  rod_shell_thickness: { new: 0.1242 to 0.1251, wear: { min: 0.1240 } }
  rod_bearing_bore: { new: 2.5014 to 2.5030 }
  rod_bearing_clearance: { new: 0.0018 to 0.0035, wear: { max: 0.0040 } }
  cylinder_bore: { new: 4.1245 to 4.1262, wear: { max: 4.1267 } }
  piston_clearance: { new: 0.0040 to 0.0060, wear: { max: 0.0066 } }
  valve_lash: { new: 0.0100 to 0.0120 }
  pin_spread: { new: { max: 0.0012 } }
  gap_spread: { new: { max: 0.0150 } }
`;

const OWN = `characteristics:
  valve_lash: { label: valve lash, quantity: length, positions: valve, instrument: feeler gauge }
  pin_spread: { label: spread of the rods of a pin, quantity: length, positions: crankpin, formula: "spread(rod_bearing_bore[*])" }
  gap_spread: { label: spread of ring gaps, quantity: length, positions: cylinder, formula: "spread(ring_end_gap[*])" }
`;

const REGISTER = `kind: instruments
instruments:
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  ball: { type: ball micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  feeler: { type: feeler gauge, resolution: 0.0001 in, max_error: 0.0005 in }
`;

/** An engine of any layout, and one session of it. */
export interface RandomEngine {
  readonly drawn: Drawn;
  readonly stage: string;
  readonly blocks: readonly RandomBlock[];
}

export interface RandomBlock {
  readonly of: Measured;
  /** In the order of the positions; halves follow each other. */
  readonly readings: readonly Tenths[];
}

export const randomEngine: fc.Arbitrary<RandomEngine> = drawnLayout.chain((drawn) =>
  fc.record({
    drawn: fc.constant(drawn),
    stage: fc.constantFrom('teardown', 'machined', 'trial', 'rebuild', 'service'),
    blocks: fc.subarray([...MEASURED, ...MEASURED], { minLength: 3 }).chain((some) =>
      fc.tuple(
        ...some.map((of) =>
          fc
            .array(fc.integer({ min: of.middle - of.spread, max: of.middle + of.spread }), {
              minLength: countOf(drawn, of),
              maxLength: countOf(drawn, of),
            })
            .map((readings): RandomBlock => ({ of, readings })),
        ),
      ),
    ),
  }),
);

const countOf = (drawn: Drawn, { at, halves }: Measured): number =>
  placesOf(drawn, at).length * (halves === true ? 2 : 1);

const mainsOf = ({ pins }: Drawn): readonly string[] =>
  Array.from({ length: pins.size + 1 }, (_, index) => String(index + 1));

function placesOf(drawn: Drawn, at: At): readonly (readonly string[])[] {
  const { cylinders, pins, rings, valves } = drawn;
  if (at === 'main') return mainsOf(drawn).map((name) => [name]);
  if (at === 'crankpin') return [...pins.keys()].map((name) => [name]);
  if (at === 'cylinder') return cylinders.map((name) => [name]);
  return cylinders.flatMap((cylinder) => (at === 'ring' ? rings : valves).map((name) => [cylinder, name]));
}

/** What a name along an axis is written as. */
export type Naming = (axis: At, name: string) => string;

export const AS_DRAWN: Naming = (_, name) => name;

export interface Written {
  /** As the layout has it. */
  readonly name: Naming;
  /** As readings have it: by a label, say. */
  readonly key: Naming;
  readonly labels: string;
  /** In which the blocks stand. */
  readonly order: <T>(blocks: readonly T[]) => readonly T[];
  /** By how much each journal, pin and cylinder was made to another size. */
  readonly made: Made;
}

/** How far from standard, in tenths of a thousandth: under of a journal, over of a cylinder. */
export type Made = (axis: 'main' | 'crankpin' | 'cylinder', name: string) => Tenths;

export const PLAIN: Written = {
  name: AS_DRAWN,
  key: AS_DRAWN,
  labels: '',
  order: (blocks) => blocks,
  made: () => 0,
};

export function engineFiles(engine: RandomEngine, written: Partial<Written> = {}): Record<string, string> {
  const { drawn, stage, blocks } = engine;
  const as = { ...PLAIN, ...written };
  const list = (axis: At, names: readonly string[]): string =>
    `[${names.map((name) => as.name(axis, name)).join(', ')}]`;
  const pins = [...drawn.pins].map(([pin, on]) => `${as.name('crankpin', pin)}: ${list('cylinder', on)}`);
  const layout = `{ mains: ${list('main', mainsOf(drawn))}, cylinders: ${list('cylinder', drawn.cylinders)}, crankpins: { ${pins.join(', ')} }, rings: ${list('ring', drawn.rings)}, valves: { ${drawn.cylinders.map((each) => `${as.name('cylinder', each)}: ${list('valve', drawn.valves)}`).join(', ')} } }`;
  return {
    'shop.yaml': `kind: shop\nunits: { length: in }\n${OWN}`,
    'instruments.yaml': REGISTER,
    'e/engine.yaml': `kind: engine\nname: A\nlayout: ${layout}\n${as.labels}`,
    'e/limits.yaml': `kind: limits\nsource: Invented.\nlimits:\n${LIMITS}${ringLimits(drawn, as)}`,
    'e/session.yaml': `kind: session\nstage: ${stage}\ndate: 2026-02-03\nmachined: [${madeTexts(drawn, as).join(', ')}]\nreadings:\n${as
      .order(blocks.map((block) => `  ${blockText(block, drawn, as)}\n`))
      .join('')}`,
  };
}

/** Of all rings, and of the first of them. */
const ringLimits = ({ rings: [first = ''] }: Drawn, { key }: Written): string =>
  `  ring_end_gap: { new: 0.0100 to 0.0260, at: { ring ${key('ring', first)}: { new: 0.0120 to 0.0240 } } }\n`;

function madeTexts(drawn: Drawn, { key, made }: Written): readonly string[] {
  const texts = (axis: 'main' | 'crankpin' | 'cylinder', part: string, way: string): readonly string[] =>
    placesOf(drawn, axis).map(([name = '']) => {
      const by = made(axis, name);
      const size = by === 0 ? 'std' : `${lengthIn('in', by)} ${way}`;
      return `{ part: ${part}, at: ${key(axis, name)}, size: ${size} }`;
    });
  return [
    ...texts('main', 'main journals', 'under'),
    ...texts('crankpin', 'crankpins', 'under'),
    ...texts('cylinder', 'cylinders', 'over'),
  ];
}

function blockText({ of, readings }: RandomBlock, drawn: Drawn, as: Written): string {
  const by = movedBy(of, drawn, as);
  const size = of.halves === true ? 2 : 1;
  const entries = placesOf(drawn, of.at).map((place, index) => {
    const texts = readings
      .slice(index * size, index * size + size)
      .map((tenths) => lengthIn('in', tenths + by(place)));
    return [place, size === 2 ? `[${texts.join(', ')}]` : (texts[0] ?? '~')] as const;
  });
  return `- { measure: ${of.id}, with: ${of.instrument}, at: { ${keyed(entries, of.at, as)} } }`;
}

/** A map in a map where a position has two names. */
function keyed(entries: readonly (readonly [readonly string[], string])[], at: At, { key }: Written): string {
  if (at !== 'ring' && at !== 'valve')
    return entries.map(([[name = ''], text]) => `${key(at, name)}: ${text}`).join(', ');
  const cylinders = [...new Set(entries.map(([[cylinder = '']]) => cylinder))];
  return cylinders
    .map((cylinder) => {
      const inside = entries.flatMap(([[of, name = ''], text]) =>
        of === cylinder ? [`${along(at, key(at, name))}: ${text}`] : [],
      );
      return `${along('cylinder', key('cylinder', cylinder))}: { ${inside.join(', ')} }`;
    })
    .join(', ');
}

/** Rings may be counted as cylinders are: then a number says which by its axis. */
const along = (axis: At, name: string): string => (/^\d/.test(name) ? `${axis} ${name}` : name);

/** How far a part that was made to another size lies from what was drawn. */
function movedBy({ id }: Measured, { pins }: Drawn, { made }: Written): (place: readonly string[]) => Tenths {
  const pinOf = (cylinder: string): string => [...pins].find(([, on]) => on.includes(cylinder))?.[0] ?? '';
  const under = (name: string): Tenths => made('main', name);
  const pin = (cylinder: string): Tenths => made('crankpin', pinOf(cylinder));
  const by: Readonly<Record<string, (name: string) => Tenths>> = {
    main_journal_diameter: (name) => -under(name),
    main_bearing_bore: (name) => -under(name),
    main_shell_thickness: (name) => under(name) / 2,
    crankpin_diameter: (name) => -made('crankpin', name),
    rod_bearing_bore: (name) => -pin(name),
    rod_shell_thickness: (name) => pin(name) / 2,
    cylinder_bore: (name) => made('cylinder', name),
    piston_diameter: (name) => made('cylinder', name),
  };
  return ([name = '']) => by[id]?.(name) ?? 0;
}
