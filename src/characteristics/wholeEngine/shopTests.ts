import { ENGINE, familyOf } from '../../layout/family.ts';
import { BY_EYE } from '../../measurement/instrument.ts';
import type { Characteristic } from '../characteristic.ts';
import { type ReadFigure, read } from '../readFigure.ts';

const [BANK, CYLINDER, VALVE, MAIN, CRANKPIN] = [
  familyOf('bank'),
  familyOf('cylinder'),
  familyOf('valve'),
  familyOf('main'),
  familyOf('crankpin'),
];

const noteSuchAs = (example: string): string =>
  `Write who tested and how as a note: \`{ value: pass, note: "${example}" }\`. A test needs no limits; a fail is out.`;

const SOLVENTS = 'solvents: gloves, eye protection and air that moves, no flame.';
const MAGNETS = 'Magnetising gear stops pacemakers. Clean and demagnetise what is used again.';

/** Magnetic ink shows cracks in iron and steel alone; a dye shows them in any metal, where they reach its face. */
const CRACKS = {
  iron: {
    by: 'by magnetic ink, or by a dye that soaks in',
    note: noteSuchAs('wet magnetic, RK'),
    caution: `Dyes, developers and magnetic ink are ${SOLVENTS} ${MAGNETS}`,
  },
  'iron or aluminium': {
    by: 'by a dye that soaks in, or of iron by magnetic ink: aluminium is not magnetic',
    note: noteSuchAs('dye, RK'),
    caution: `Dyes, developers and magnetic ink are ${SOLVENTS} ${MAGNETS}`,
  },
  'steel or heat-resisting steel': {
    by: 'by magnetic ink where a magnet holds it, else by a dye that soaks in: many exhaust valves are not magnetic',
    note: noteSuchAs('dye, RK'),
    caution: `Dyes, developers and magnetic ink are ${SOLVENTS} ${MAGNETS}`,
  },
  aluminium: {
    by: 'by a dye that soaks in; magnetic ink shows nothing in aluminium, and serves on a piston of iron or steel alone',
    note: noteSuchAs('dye, RK'),
    caution: `Dyes and developers are ${SOLVENTS}`,
  },
} as const;

const UNDER_PRESSURE =
  'A part under air bursts like a bomb: as little pressure as the manual says, in water or behind a guard, plates bolted all round, and nobody in line with plugs. Hot water scalds.';

type Tested = Omit<ReadFigure, 'usual' | 'source'> & Partial<Pick<ReadFigure, 'usual' | 'source'>>;

const tested = (about: Tested): Characteristic =>
  read({
    quantity: 'pass or fail',
    outcomes: { pass: 'sound', fail: 'cracked' },
    usual: BY_EYE,
    note: noteSuchAs('RK'),
    formula: 'pass, fail or not done',
    source: 'common practice, no source',
    words: { above: 'over', below: 'under' },
    ...about,
  });

const crackTest = (
  of: string,
  label: string,
  family: Characteristic['family'],
  where: string,
  metal: keyof typeof CRACKS = 'iron',
) =>
  tested({
    id: `${of}_crack_test`,
    label: `${label} crack test`,
    of,
    family,
    description: `Whether ${where} shows a crack, ${CRACKS[metal].by}.`,
    note: CRACKS[metal].note,
    caution: CRACKS[metal].caution,
  });

const pressureTest = (of: string, label: string, family: Characteristic['family'], what: string) =>
  tested({
    id: `${of}_pressure_test`,
    label: `${label} pressure test`,
    of,
    family,
    outcomes: { pass: 'tight', fail: 'leaking' },
    note: noteSuchAs('40 psi, warm water, RK'),
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
    note: noteSuchAs('by file, RK'),
    description:
      'Whether it is as hard as it has to be, by a file or by a tester against a block of known hardness.',
  });

/** What is seen or tested and not measured: pass, fail or not done, and who says so. */
export const shopTests: readonly Characteristic[] = [
  crackTest('crankshaft', 'crankshaft', ENGINE, 'the crankshaft, above all its fillets and oil holes,'),
  crackTest(
    'block',
    'block',
    ENGINE,
    'the block, above all its webs and between its bores,',
    'iron or aluminium',
  ),
  crackTest(
    'head',
    'cylinder head',
    CYLINDER,
    'the head at a cylinder, above all between its seats,',
    'iron or aluminium',
  ),
  crackTest(
    'rod',
    'rod',
    CYLINDER,
    'a rod, above all at its bolts and below its small end,',
    'iron or aluminium',
  ),
  crackTest(
    'piston',
    'piston',
    CYLINDER,
    'a piston, above all at its pin bosses and its crown,',
    'aluminium',
  ),
  crackTest('camshaft', 'camshaft', ENGINE, 'the camshaft'),
  crackTest(
    'valve',
    'valve',
    VALVE,
    'a valve, above all below its head and at its lock groove,',
    'steel or heat-resisting steel',
  ),
  pressureTest('block', 'block', ENGINE, 'the water jacket of the block'),
  pressureTest('head', 'cylinder head', BANK, 'the water jacket of the head'),
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
