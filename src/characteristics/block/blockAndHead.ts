import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { journalTaper } from '../form.ts';
import { read, readSize } from '../readFigure.ts';
import { flatness } from './flatness.ts';

const BANK = familyOf('bank');

const LIFTING = 'Blocks and heads are heavy: lift them with tackle, and keep hands off cut edges.';

const CUT =
  'What lies above its least limit, `least_thickness` or the least of `wear`, may still be cut, and is shown beside the reading; unless the part is new, that least judges it, since the least of `new` is that of one that was never cut. Some makers limit head and block together.';

const roughness = (name: string, of: string): Characteristic =>
  read({
    id: `${name}_roughness`,
    label: `${name} roughness`,
    of,
    family: BANK,
    quantity: 'roughness',
    description: `Ra of the ${name}, across the marks of the cutter.`,
    usual: 'roughness tester',
    words: { above: 'rough', below: 'smooth' },
    source: 'common practice, no source',
  });

/** Decks and main bores. */
export const block: readonly Characteristic[] = [
  ...flatness({ name: 'deck', of: 'block', source: 'TM 5-4320-300-14, p. 6-45: .003 across, .006 along' }),
  roughness('deck', 'block'),
  read({
    id: 'cylinder_centre_offset',
    label: 'cylinder centre offset',
    of: 'cylinder',
    family: familyOf('cylinder'),
    isNeverBelowZero: true,
    description:
      'How far the centre of a worn cylinder lies from the centre on which it was bored: measured against the unworn ring above the travel of the rings.',
    note: 'A cylinder that is bored on its old centre must clean up on the worn side: plan takes this instead of assuming that all wear lies on one side.',
    usual: 'dial indicator',
    words: { above: 'off centre', below: 'near' },
    source: 'common practice, no source',
  }),
  readSize({
    id: 'deck_height',
    isCutDown: true,
    label: 'deck height',
    of: 'block',
    family: BANK,
    usualGrid: { stations: ['front', 'rear'], directions: [] },
    description: 'From the axis of the main bores to the deck, over a bar in the main bores, at both ends.',
    note: CUT,
    usual: 'height gauge',
    words: { above: 'high', below: 'low' },
    caution: LIFTING,
    source: 'TM 9-2815-256-24, p. 3-185: 11.889 to 11.894 in',
  }),
  read({
    id: 'deck_parallelism',
    label: 'deck out of parallel',
    of: 'block',
    family: BANK,
    figure: 'taper',
    description:
      'Deck height at one end less that at the other: how far the deck is out of parallel with the crankshaft.',
    usual: 'height gauge',
    formula: 'deck height at one end − at the other, without a sign',
    derivations: [
      {
        route: 'one end − the other',
        inputs: ['deck_height'],
        compute: ([height], choice) => height && journalTaper(height, choice),
      },
    ],
    onlyWithLimits: true,
    source: 'common practice, no source',
    examples: [
      {
        unit: 'in',
        given: { deck_height: { stations: ['front', 'rear'], rows: [['11.8925'], ['11.8910']] } },
        least: '0.0015',
        greatest: '0.0015',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
  read({
    id: 'main_bore_alignment',
    label: 'main bore alignment',
    of: 'main_housing',
    dependsOn: ['main_cap', 'main_bolt'],
    family: familyOf('main'),
    description:
      'How far a main bore lies off the line of the others, caps tightened: feelers under a straightedge or round an arbor in the empty bores.',
    usual: 'feeler gauge',
    words: { above: 'out of line', below: 'in line' },
    source:
      'TM 5-4320-300-14, p. 6-45, has the crankshaft turn by hand in new shells; figures are common practice, no source',
  }),
];

/** The heads that lie on the decks: one to a bank. */
export const head: readonly Characteristic[] = [
  ...flatness({ name: 'head', of: 'head', source: 'TM 5-4320-300-14, p. 6-36: .005 along, .004 across' }),
  roughness('head', 'head'),
  readSize({
    id: 'head_thickness',
    isCutDown: true,
    label: 'head thickness',
    of: 'head',
    family: BANK,
    usualGrid: { stations: ['front', 'rear'], directions: [] },
    description: 'From the face that lies on the gasket to the machined face above it, at both ends.',
    note: CUT,
    usual: 'micrometer',
    words: { above: 'thick', below: 'thin' },
    caution: LIFTING,
    source: 'TM 9-6115-604-34, table 1-4: 4.745 to 4.755, not below 4.715 in',
  }),
];
