import { ENGINE, familyOf } from '../../layout/family.ts';
import { BY_EYE } from '../../measurement/instrument.ts';
import type { Characteristic } from '../characteristic.ts';
import { type ReadFigure, read } from '../readFigure.ts';

const [CYLINDER, VALVE, MAIN, CRANKPIN] = [
  familyOf('cylinder'),
  familyOf('valve'),
  familyOf('main'),
  familyOf('crankpin'),
];

const NOTE =
  'Write who tested and how as a note: `{ value: pass, note: "wet magnetic, RK" }`. A test needs no limits; a fail is out.';

const DYES =
  'Dyes, developers and magnetic ink are solvents: gloves, eye protection and air that moves, no flame. Magnetising gear stops pacemakers. Clean and demagnetise what is used again.';
const UNDER_PRESSURE =
  'A part under air bursts like a bomb: as little pressure as the manual says, in water or behind a guard, plates bolted all round, and nobody in line with plugs. Hot water scalds.';

type Tested = Omit<ReadFigure, 'usual' | 'source'> & Partial<Pick<ReadFigure, 'usual' | 'source'>>;

const tested = (about: Tested): Characteristic =>
  read({
    quantity: 'pass or fail',
    outcomes: { pass: 'sound', fail: 'cracked' },
    usual: BY_EYE,
    note: NOTE,
    formula: 'pass, fail or not done',
    source: 'common practice, no source',
    words: { above: 'over', below: 'under' },
    ...about,
  });

const crackTest = (of: string, label: string, family: Characteristic['family'], where: string) =>
  tested({
    id: `${of}_crack_test`,
    label: `${label} crack test`,
    of,
    family,
    description: `Whether ${where} shows a crack, by magnetic ink or by dye.`,
    caution: DYES,
  });

const pressureTest = (of: string, label: string, family: Characteristic['family'], what: string) =>
  tested({
    id: `${of}_pressure_test`,
    label: `${label} pressure test`,
    of,
    family,
    outcomes: { pass: 'tight', fail: 'leaking' },
    description: `Whether ${what} holds its pressure; write pressure, time and temperature into the note.`,
    caution: UNDER_PRESSURE,
  });

const hardnessTest = (of: string, label: string, family: Characteristic['family']) =>
  tested({
    id: `${of}_hardness_test`,
    label: `${label} hardness test`,
    of,
    family,
    outcomes: { pass: 'hard', fail: 'soft' },
    description:
      'Whether it is as hard as it has to be, by a file or by a tester against a block of known hardness.',
  });

/** What is seen or tested and not measured: pass, fail or not done, and who says so. */
export const shopTests: readonly Characteristic[] = [
  crackTest('crankshaft', 'crankshaft', ENGINE, 'the crankshaft, above all its fillets and oil holes,'),
  crackTest('block', 'block', ENGINE, 'the block, above all its webs and between its bores,'),
  crackTest('head', 'cylinder head', CYLINDER, 'the head at a cylinder, above all between its seats,'),
  crackTest('rod', 'rod', CYLINDER, 'a rod, above all at its bolts and below its small end,'),
  crackTest('piston', 'piston', CYLINDER, 'a piston, above all at its pin bosses and its crown,'),
  crackTest('camshaft', 'camshaft', ENGINE, 'the camshaft'),
  crackTest('valve', 'valve', VALVE, 'a valve, above all below its head and at its lock groove,'),
  pressureTest('block', 'block', ENGINE, 'the water jacket of the block'),
  pressureTest('head', 'cylinder head', ENGINE, 'the water jacket of the head'),
  tested({
    id: 'valve_seat_leak_test',
    label: 'valve seat leak test',
    of: 'valve_seat',
    dependsOn: ['valve'],
    family: VALVE,
    outcomes: { pass: 'tight', fail: 'leaking' },
    description: 'Whether a valve holds on its seat, by vacuum or by a liquid in the port.',
    caution: 'Solvent in a port burns: no flame, no sparks, air that moves.',
  }),
  hardnessTest('main_journal', 'main journal', MAIN),
  hardnessTest('crankpin', 'crankpin', CRANKPIN),
  hardnessTest('lobe', 'cam lobe', familyOf('lobe')),
  tested({
    id: 'valve_spring_square_test',
    label: 'valve spring, square by eye',
    of: 'valve_spring',
    family: VALVE,
    outcomes: { pass: 'square', fail: 'leaning' },
    description: 'Whether a valve spring that is turned on a plate stands by a square all the way round.',
  }),
];
