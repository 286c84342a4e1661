import { familyOf } from '../../layout/family.ts';
import { fraction } from '../../quantity/fraction.ts';
import type { Characteristic } from '../characteristic.ts';
import { type ReadFigure, read } from '../readFigure.ts';
import { workedOut } from '../workedOut.ts';

const CYLINDER = familyOf('cylinder');
const DEPENDS = ['timing_chain', 'rocker', 'crankshaft'];
const SOURCE = 'common practice, no source: degree wheel and dial, all at one stated lift';
const AT_LIFT =
  'Events say nothing without the lift at which they were taken: write it under conditions, such as `lift: 0.050 in`.';
const TURNED =
  'The crankshaft is turned for it, and a valve may meet a piston: ignition and fuel off, by hand, and stop at any resistance.';

const LATE = { above: 'late', below: 'early' };
const EARLY = { above: 'early', below: 'late' };
const SPAN = { above: 'long', below: 'short' };

/** Degrees of the crankshaft come round again after two turns; half of a sum of them after one, a quarter after half of one. */
const [TWO_TURNS, ONE_TURN, HALF_A_TURN] = [fraction(720), fraction(360), fraction(180)];

type Angle = Pick<ReadFigure, 'id' | 'label' | 'description' | 'words'>;

const angle = (about: Angle) => ({
  of: 'camshaft',
  dependsOn: DEPENDS,
  isAssemblyFigure: true as const,
  note: AT_LIFT,
  under: ['lift'],
  caution: TURNED,
  quantity: 'angle' as const,
  cycle: TWO_TURNS,
  family: CYLINDER,
  usual: 'protractor' as const,
  source: SOURCE,
  ...about,
});

const event = (about: Angle): Characteristic => read(angle(about));

const intakeOpening = event({
  id: 'intake_opening',
  label: 'intake opening',
  description: 'Degrees before top dead centre at which the intake valve opens; below zero after it.',
  words: EARLY,
});
const intakeClosing = event({
  id: 'intake_closing',
  label: 'intake closing',
  description: 'Degrees after bottom dead centre at which the intake valve closes; below zero before it.',
  words: LATE,
});
const exhaustOpening = event({
  id: 'exhaust_opening',
  label: 'exhaust opening',
  description: 'Degrees before bottom dead centre at which the exhaust valve opens; below zero after it.',
  words: EARLY,
});
const exhaustClosing = event({
  id: 'exhaust_closing',
  label: 'exhaust closing',
  description: 'Degrees after top dead centre at which the exhaust valve closes; below zero before it.',
  words: LATE,
});

const EXAMPLE = { intake_opening: '9', intake_closing: '55', exhaust_opening: '51', exhaust_closing: '13' };

type Given = Readonly<Partial<typeof EXAMPLE>>;

const example = (given: Given, gives: string, printed: string): Characteristic['examples'] => [
  { unit: 'deg', given, least: gives, greatest: gives, source: `service data of a V8 engine: ${printed}` },
];

const { intake_opening, intake_closing, exhaust_opening, exhaust_closing } = EXAMPLE;

/** What a degree wheel reads at one stated lift, and what follows from it. */
export const camEvents: readonly Characteristic[] = [
  intakeOpening,
  intakeClosing,
  exhaustOpening,
  exhaustClosing,
  workedOut({
    ...angle({
      id: 'intake_duration',
      label: 'intake duration',
      description: 'For how many degrees of the crankshaft the intake valve is open.',
      words: SPAN,
    }),
    route: 'intake opening + 180 + intake closing',
    formula: 'intake_opening + 180 + intake_closing',
    from: [intakeOpening, intakeClosing],
    examples: example({ intake_opening, intake_closing }, '244', 'printed 244'),
  }),
  workedOut({
    ...angle({
      id: 'exhaust_duration',
      label: 'exhaust duration',
      description: 'For how many degrees of the crankshaft the exhaust valve is open.',
      words: SPAN,
    }),
    route: 'exhaust opening + 180 + exhaust closing',
    formula: 'exhaust_opening + 180 + exhaust_closing',
    from: [exhaustOpening, exhaustClosing],
    examples: example({ exhaust_opening, exhaust_closing }, '244', 'printed 244'),
  }),
  workedOut({
    ...angle({
      id: 'intake_centreline',
      label: 'intake lobe centre',
      description: 'Degrees after top dead centre at which the intake valve is half way between its events.',
      words: LATE,
    }),
    cycle: ONE_TURN,
    route: 'intake duration / 2 − intake opening',
    formula: '(intake_closing + 180 - intake_opening) / 2',
    from: [intakeClosing, intakeOpening],
    examples: example({ intake_opening, intake_closing }, '113', 'computed from its events'),
  }),
  workedOut({
    ...angle({
      id: 'exhaust_centreline',
      label: 'exhaust lobe centre',
      description:
        'Degrees before top dead centre at which the exhaust valve is half way between its events.',
      words: EARLY,
    }),
    cycle: ONE_TURN,
    route: 'exhaust duration / 2 − exhaust closing',
    formula: '(exhaust_opening + 180 - exhaust_closing) / 2',
    from: [exhaustOpening, exhaustClosing],
    examples: example({ exhaust_opening, exhaust_closing }, '109', 'computed from its events'),
  }),
  workedOut({
    ...angle({
      id: 'lobe_separation',
      label: 'lobe separation',
      description:
        'Half of the degrees of the crankshaft between the centres of the exhaust and the intake lobe.',
      words: { above: 'wide', below: 'narrow' },
    }),
    cycle: HALF_A_TURN,
    onlyWithLimits: true,
    route: '(intake lobe centre + exhaust lobe centre) / 2',
    formula: '(intake_closing - intake_opening + exhaust_opening - exhaust_closing + 360) / 4',
    from: [intakeClosing, intakeOpening, exhaustOpening, exhaustClosing],
    examples: example(EXAMPLE, '111', 'computed from its events'),
  }),
  workedOut({
    ...angle({
      id: 'valve_overlap',
      label: 'valve overlap',
      description: 'For how many degrees of the crankshaft intake and exhaust valve are open together.',
      words: SPAN,
    }),
    onlyWithLimits: true,
    route: 'intake opening + exhaust closing',
    formula: 'intake_opening + exhaust_closing',
    from: [intakeOpening, exhaustClosing],
    examples: example({ intake_opening, exhaust_closing }, '22', 'printed 22'),
  }),
];
