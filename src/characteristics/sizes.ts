import type { Dimension } from '../documents/grades/movement.ts';
import type { Family } from '../layout/family.ts';
import type { InstrumentType } from '../measurement/instrument.ts';
import type { Characteristic, Derivation, UsualGrid, WorkedExample } from './characteristic.ts';
import { boreTaper, journalTaper, outOfRound } from './form.ts';

/** Full differences of diameters, as engine manuals take them: ISO 1101 and ISO 12180 halve both. */
const FORM_SOURCE = 'workshop convention: full difference of diameters (TM 9-2815-202-34, p. 4-157)';

const FORM_WORDS = { above: 'over', below: 'under' };

interface MeasuredPart {
  /** What the ids of its figures begin with; a shop's grids go by it as well. */
  readonly name: string;
  /** In trade words, and what kind of diameter it is: `main journal`, `diameter`. */
  readonly label: string;
  readonly family: Family;
  readonly of: string;
  readonly dependsOn?: readonly string[];
  readonly usual: InstrumentType;
}

/**
 * A diameter and what it brings: its out of round and its taper.
 * Shells are eccentric and relieved at the split, so a bore with shells in has no out of round to judge.
 */
export interface Diameter extends MeasuredPart {
  /** Absent where the name says it already: `piston_pin_bore`, beside the pin's own diameter. */
  readonly size?: 'diameter' | 'bore';
  readonly hasShells?: true;
  readonly description: string;
  readonly source: string;
  readonly taperBy: 'ends' | 'range';
  readonly expandsWith?: string;
  readonly nominal?: string;
  readonly usualGrid?: UsualGrid;
  readonly dimension?: Dimension;
  readonly caution?: string;
}

export function diameter(of: Diameter): readonly Characteristic[] {
  return [sizeOf(of), ...(of.hasShells === true ? [] : [outOfRoundOf(of)]), taperOf(of)];
}

const idOf = ({ name, size }: Diameter): string => (size === undefined ? name : `${name}_${size}`);

const labelOf = ({ label, size }: Diameter): string => (size === undefined ? label : `${label} ${size}`);

const partsOf = ({ family, of, dependsOn = [], name }: MeasuredPart) => ({
  family,
  of,
  dependsOn,
  grid: name,
});

const sizeOf = (of: Diameter): Characteristic => ({
  id: idOf(of),
  label: labelOf(of),
  description: of.description,
  quantity: 'length',
  figure: 'size',
  ...partsOf(of),
  usual: of.usual,
  formula: 'as read; the least and the greatest of the readings are both judged',
  derivations: [],
  words: { above: 'large', below: 'small' },
  ...(of.expandsWith === undefined ? {} : { expandsWith: of.expandsWith }),
  ...(of.nominal === undefined ? {} : { nominal: of.nominal }),
  ...(of.usualGrid === undefined ? {} : { usualGrid: of.usualGrid }),
  ...(of.dimension === undefined ? {} : { dimension: of.dimension }),
  ...(of.caution === undefined ? {} : { caution: of.caution }),
  source: of.source,
  examples: [],
});

const ROUND_NOTE =
  'The greatest less the least of several readings is biased upward: where a reading repeats within 0.3 to 0.5 tenth (one standard deviation), four of a round part show a tenth out of round more than half of the time (simulated). Where a tenth matters, repeat each point.';

const TAPER_NOTE =
  'The size of the difference is judged, without a sign; which end is larger is shown beside it, and with a station between the ends a barrel or a hollow.';

const outOfRoundOf = (of: Diameter): Characteristic => ({
  ...formOf(of, 'out of round'),
  description: `Of the ${labelOf(of)}: the greatest less the least at one station, the worst station.`,
  note: ROUND_NOTE,
  formula: 'at each station the greatest diameter − the least; the worst station',
  derivations: [
    { route: 'from diameters', inputs: [idOf(of)], compute: ([grid]) => grid && outOfRound(grid) },
  ],
  examples: [
    {
      unit: 'in',
      given: {
        [idOf(of)]: {
          stations: ['front', 'rear'],
          directions: ['a', 'b'],
          rows: [
            ['3.2478', '3.2471'],
            ['3.2477', '3.2475'],
          ],
        },
      },
      least: '0.0007',
      greatest: '0.0007',
      source: 'worked by hand, invented readings',
    },
  ],
});

/** How a taper is taken: said in words, and worked out. */
const TAPERS = {
  ends: {
    difference: 'one end less the other',
    formula: 'in each direction one end − the other; the worst direction',
    compute: journalTaper,
    ofExample: '0.0008',
  },
  range: {
    difference: 'the greatest less the least along the part',
    formula: 'in each direction the greatest − the least; the worst direction',
    compute: boreTaper,
    ofExample: '0.0011',
  },
} as const;

function taperOf(of: Diameter): Characteristic {
  const { difference, formula, compute, ofExample } = TAPERS[of.taperBy];
  return {
    ...formOf(of, 'taper'),
    description: `Of the ${labelOf(of)}: ${difference}, the worst direction.`,
    note: TAPER_NOTE,
    formula,
    derivations: [
      {
        route: 'from diameters',
        inputs: [idOf(of)],
        compute: ([grid], choice) => grid && compute(grid, choice),
      },
    ],
    examples: [
      {
        unit: 'in',
        given: {
          [idOf(of)]: {
            stations: ['top', 'middle', 'bottom'],
            directions: ['a'],
            rows: [['4.1262'], ['4.1265'], ['4.1254']],
          },
        },
        least: ofExample,
        greatest: ofExample,
        source: 'worked by hand, invented readings',
      },
    ],
  };
}

const formOf = <Form extends 'out of round' | 'taper'>(of: Diameter, figure: Form) => ({
  id: `${of.name}_${figure.replaceAll(' ', '_')}`,
  label: `${of.label} ${figure}`,
  quantity: 'length' as const,
  figure,
  ...partsOf(of),
  usual: of.usual,
  words: FORM_WORDS,
  onlyWithLimits: true,
  source: FORM_SOURCE,
});

/** A clearance: read directly, or worked out by either of two routes. */
export function clearanceOf(
  about: Omit<Characteristic, 'quantity' | 'usual' | 'derivations' | 'words' | 'examples'>,
  derivations: readonly Derivation[],
  usual: InstrumentType,
  examples: readonly WorkedExample[],
): Characteristic {
  return {
    figure: 'clearance',
    ...about,
    quantity: 'length',
    usual,
    derivations,
    words: { above: 'loose', below: 'tight' },
    examples,
  };
}
