import type { Characteristic, Derivation, InputPlace } from '../../src/characteristics/characteristic.ts';
import { unitsOf } from '../../src/quantity/units.ts';

/** Two readings of one part, and what they are readings over. */
interface Pair {
  readonly over: string;
  readonly figures: readonly [string, string];
}

/** What is read at every place of an input: one figure or a pair, or one figure for each place, as the formula takes them. */
type Given = string | Pair | readonly string[];

export interface Way {
  /** What is read so that the figure comes to `wanted`, in its first unit. */
  readonly given: (wanted: number) => Readonly<Record<string, Given>>;
  /** Figures such as a duration lie about this, not about nought. */
  readonly about?: number;
  /** It is a size, a sum of weights, a share or a difference without a sign: nothing that is read brings it below zero. */
  readonly isNeverBelowZero?: true;
  /** By way of π no reading comes to the limit itself. */
  readonly isRound?: true;
}

/** Six decimals: none of the figures here has more, but those that go by way of π. */
const text = (amount: number): string => String(Math.round(amount * 1e6) / 1e6);

const A_WHOLE = 1000;

/** The first of two inputs less the second. */
const difference = ([larger = '', smaller = '']: readonly string[]): Way => ({
  given: (wanted) => ({ [larger]: text(A_WHOLE + wanted), [smaller]: text(A_WHOLE) }),
});

const ALONG = 'stations: [front, rear]';
const ROUND = 'directions: [throw, square]';

/** Two readings of one part lie so far apart. */
const apart = (input: string, over: string): Way => ({
  given: (wanted) => ({ [input]: { over, figures: [text(A_WHOLE), text(A_WHOLE + wanted)] } }),
  isNeverBelowZero: true,
});

/** The greatest of four places less the least. */
const spreadOver = (input: string): Way => ({
  given: (wanted) => ({ [input]: [500, 500, 500 + wanted, 500].map(text) }),
  isNeverBelowZero: true,
});

/** Of a cylinder with one beside it, and of several points of one cylinder. */
const beside = (input: string): Way => ({
  given: (wanted) => ({ [input]: [text(50 + wanted), text(50)] }),
  isNeverBelowZero: true,
});

const alone = (input: string, of: (wanted: number) => number, more: Partial<Way> = {}): Way => ({
  given: (wanted) => ({ [input]: text(of(wanted)) }),
  ...more,
});

const throughShells = (place: string, journal: string): Way => ({
  given: (wanted) => ({
    [`${place}_housing_bore`]: text(A_WHOLE + 10 + wanted),
    [`${place}_shell_thickness`]: text(5),
    [journal]: text(A_WHOLE),
  }),
});

const lineOn = (face: string, way: 'along' | 'across'): Way => ({
  given: (wanted) => ({
    [`${face}_flatness`]: { over: `directions: [${way}, diagonal]`, figures: [text(wanted), '7'] },
  }),
});

/** A quarter of π × diameter² × height in cubic centimetres, of lengths in millimetres. */
const roundVolume = (diameter: string, height: string, more: Partial<Way> = {}): Way => ({
  given: (wanted) => ({ [diameter]: '40 mm', [height]: `${text((wanted * 1000) / (Math.PI * 400))} mm` }),
  isRound: true,
  ...more,
});

const events = (given: (wanted: number) => readonly (readonly [string, number])[], about?: number): Way => ({
  given: (wanted) => Object.fromEntries(given(wanted).map(([event, angle]) => [event, text(angle)])),
  ...(about === undefined ? {} : { about }),
});

/** Those that are no plain difference of two sizes, by what they are worked out from. */
const WAYS: Readonly<Record<string, Way>> = {
  'main_bearing_clearance of main_housing_bore, main_shell_thickness, main_journal_diameter': throughShells(
    'main',
    'main_journal_diameter',
  ),
  'rod_bearing_clearance of rod_housing_bore, rod_shell_thickness, crankpin_diameter': throughShells(
    'rod',
    'crankpin_diameter',
  ),
  'thrust_bearing_width of thrust_housing_width, thrust_washer_thickness': {
    given: (wanted) => ({ thrust_housing_width: text(wanted - 2), thrust_washer_thickness: text(1) }),
  },
  'crank_stroke of crank_throw': alone('crank_throw', (wanted) => wanted / 2, { isNeverBelowZero: true }),
  'crank_stroke of piston_travel': alone('piston_travel', (wanted) => wanted, { isNeverBelowZero: true }),
  'piston_protrusion of crank_stroke, rod_centre_distance, piston_compression_height, deck_height': {
    given: (wanted) => ({
      crank_stroke: text(200),
      rod_centre_distance: text(300),
      piston_compression_height: text(100 + wanted),
      deck_height: text(500),
    }),
  },
  'deck_clearance of piston_protrusion': alone('piston_protrusion', (wanted) => -wanted),
  'deck_flatness_along of deck_flatness': lineOn('deck', 'along'),
  'deck_flatness_across of deck_flatness': lineOn('deck', 'across'),
  'head_flatness_along of head_flatness': lineOn('head', 'along'),
  'head_flatness_across of head_flatness': lineOn('head', 'across'),
  'counterbore_depth_spread of counterbore_depth': apart('counterbore_depth', ALONG),
  'liner_protrusion_spread of liner_protrusion': apart('liner_protrusion', ALONG),
  'counterbore_depth_step of counterbore_depth': beside('counterbore_depth'),
  'liner_protrusion_step of liner_protrusion': beside('liner_protrusion'),
  'liner_protrusion of liner_flange_thickness, spacer_plate_thickness, spacer_gasket_thickness': {
    given: (wanted) => ({
      liner_flange_thickness: text(A_WHOLE + 3 + wanted),
      spacer_plate_thickness: text(A_WHOLE),
      spacer_gasket_thickness: text(3),
    }),
  },
  'swept_volume of cylinder_bore, crank_stroke': roundVolume('cylinder_bore', 'crank_stroke', {
    isNeverBelowZero: true,
  }),
  'gasket_volume of head_gasket_opening, head_gasket_thickness': roundVolume(
    'head_gasket_opening',
    'head_gasket_thickness',
    { isNeverBelowZero: true },
  ),
  'deck_volume of cylinder_bore, deck_clearance': roundVolume('cylinder_bore', 'deck_clearance'),
  // The stroke is a nominal size of the engine.
  'swept_volume of cylinder_bore': {
    given: (wanted) => ({ cylinder_bore: `${text(Math.sqrt((wanted * 1000 * 4) / (Math.PI * 50)))} mm` }),
    isRound: true,
    isNeverBelowZero: true,
  },
  'displacement of swept_volume': alone('swept_volume', (wanted) => wanted / 4, { isNeverBelowZero: true }),
  'clearance_volume of chamber_volume, gasket_volume, deck_volume, piston_crown_volume': {
    given: (wanted) => ({
      chamber_volume: text(50),
      gasket_volume: text(6),
      deck_volume: text(4),
      piston_crown_volume: text(wanted - 60),
    }),
  },
  'compression_ratio of swept_volume, clearance_volume': {
    given: (wanted) => ({ swept_volume: text((wanted - 1) * 50), clearance_volume: text(50) }),
    isNeverBelowZero: true,
  },
  'valve_spring_rate of valve_spring_load_open, valve_spring_load_closed, valve_spring_length_closed, valve_spring_length_open':
    {
      given: (wanted) => ({
        valve_spring_load_open: text(100 + 2 * wanted),
        valve_spring_load_closed: text(100),
        valve_spring_length_closed: text(5),
        valve_spring_length_open: text(3),
      }),
    },
  'coil_bind_margin of valve_spring_installed_height, valve_lift, valve_spring_solid_length': {
    given: (wanted) => ({
      valve_spring_installed_height: text(100 + wanted),
      valve_lift: text(40),
      valve_spring_solid_length: text(60),
    }),
  },
  'rocker_ratio of valve_lift, lifter_lift': {
    given: (wanted) => ({ valve_lift: text(wanted * 2), lifter_lift: text(2) }),
    isNeverBelowZero: true,
  },
  'intake_duration of intake_opening, intake_closing': events(
    (wanted) => [
      ['intake_opening', 10],
      ['intake_closing', wanted - 190],
    ],
    200,
  ),
  'exhaust_duration of exhaust_opening, exhaust_closing': events(
    (wanted) => [
      ['exhaust_opening', wanted - 190],
      ['exhaust_closing', 10],
    ],
    200,
  ),
  'intake_centreline of intake_closing, intake_opening': events(
    (wanted) => [
      ['intake_closing', 2 * (wanted - 90) + 10],
      ['intake_opening', 10],
    ],
    90,
  ),
  'exhaust_centreline of exhaust_opening, exhaust_closing': events(
    (wanted) => [
      ['exhaust_opening', 2 * (wanted - 90) + 10],
      ['exhaust_closing', 10],
    ],
    90,
  ),
  'lobe_separation of intake_closing, intake_opening, exhaust_opening, exhaust_closing': events(
    (wanted) => [
      ['intake_closing', 2 * (wanted - 90) + 10],
      ['intake_opening', 10],
      ['exhaust_opening', 2 * (wanted - 90) + 20],
      ['exhaust_closing', 20],
    ],
    90,
  ),
  'valve_overlap of intake_opening, exhaust_closing': events((wanted) => [
    ['intake_opening', 5],
    ['exhaust_closing', wanted - 5],
  ]),
  'reciprocating_weight of piston_weight, piston_pin_weight, ring_set_weight, rod_small_end_weight': {
    given: (wanted) => ({
      piston_weight: text(wanted - 6),
      piston_pin_weight: text(3),
      ring_set_weight: text(1),
      rod_small_end_weight: text(2),
    }),
    isNeverBelowZero: true,
  },
  'rotating_weight of rod_big_end_weight, rod_shell_weight': {
    given: (wanted) => ({ rod_big_end_weight: text(wanted - 4), rod_shell_weight: text(4) }),
    isNeverBelowZero: true,
  },
  'bobweight of rotating_weight, balance_factor, reciprocating_weight, oil_allowance': {
    given: (wanted) => ({
      rotating_weight: text(wanted - 6),
      balance_factor: text(50),
      reciprocating_weight: text(8),
      oil_allowance: text(2),
    }),
    isNeverBelowZero: true,
  },
  'compression_share of compression_pressure': {
    given: (wanted) => ({ compression_pressure: [100, wanted, 90, 100].map(text) }),
    isNeverBelowZero: true,
  },
  'leak_down of leak_down_supply, leak_down_held': {
    given: (wanted) => ({ leak_down_supply: text(100), leak_down_held: text(100 - wanted) }),
    isNeverBelowZero: true,
  },
};

export const wayOf = ({ id }: Characteristic, { inputs }: Derivation): string =>
  `${id} of ${inputs.join(', ')}`;

export const statedWays: readonly string[] = Object.keys(WAYS);

/** How readings lead through a formula to a figure that is wanted. */
export function wayThrough(of: Characteristic, derivation: Derivation): Way {
  const { inputs } = derivation;
  const [first = ''] = inputs;
  const stated = WAYS[wayOf(of, derivation)];
  if (stated !== undefined) return stated;
  if (of.figure === 'taper') return apart(first, ALONG);
  if (of.figure === 'out of round') return apart(first, ROUND);
  if (of.id.endsWith('_weight_spread')) return spreadOver(first);
  if (inputs.length === 2) return difference(inputs);
  throw new Error(`no way to ${wayOf(of, derivation)}`);
}

/** The readings of a session, at the places at which the formula looks for them. */
export function readingsAt(
  places: readonly InputPlace[],
  given: Readonly<Record<string, Given>>,
  find: (id: string) => Pick<Characteristic, 'family' | 'quantity'> | undefined,
): readonly string[] {
  return Object.entries(given).map(([id, reading]) => {
    const { family, quantity = 'length' } = find(id) ?? {};
    const unit = unitsOf(quantity)[0]?.name ?? '';
    const figureAt = (index: number): string => {
      if (typeof reading === 'string') return withUnit(reading, unit);
      if ('over' in reading) return `[${reading.figures.map((each) => withUnit(each, unit)).join(', ')}]`;
      return withUnit(reading[index] ?? reading.at(-1) ?? '', unit);
    };
    const over = typeof reading === 'object' && 'over' in reading ? `${reading.over}, ` : '';
    if (family?.isSingle === true) return `{ measure: ${id}, ${over}value: ${figureAt(0)} }`;
    const at = places
      .filter((place) => place.id === id)
      .map(({ position }, index) => `${position.name}: ${figureAt(index)}`);
    return `{ measure: ${id}, ${over}at: { ${at.join(', ')} } }`;
  });
}

const withUnit = (figure: string, unit: string): string =>
  figure.includes(' ') ? figure : `${figure} ${unit}`.trim();
