import type { Axis } from './axis.ts';
import { ENGINE, type Family, STEP } from './family.ts';
import { fullName, type Position } from './position.ts';

/** `3 (flywheel end)`, `cylinder 3 top ring`; nothing for what is measured once an engine. */
export function positionText(position: Position): string {
  const { family, name, label } = position;
  if (family === ENGINE) return '';
  const whole = family.axes.length > 1 ? fullName(position) : name;
  return label === undefined ? whole : `${whole} (${label})`;
}

/** `once an engine`, `at a main`. */
export const whereMeasured = ({ isSingle, name }: Family): string =>
  isSingle ? 'once an engine' : `at a ${name}`;

/** `the whole engine, once`, `each main`. */
export const everyOne = ({ isSingle, isNamedBySession, name }: Family): string =>
  isSingle ? 'the whole engine, once' : isNamedBySession ? 'each step of the assembly' : `each ${name}`;

/** `cylinders and their rings`. */
export const allOf = ({ axes }: Family): string => axes.map((axis) => PLURALS[axis]).join(' and their ');

const PLURALS: Readonly<Record<Axis, string>> = {
  main: 'main bearings',
  crankpin: 'crankpins',
  cylinder: 'cylinders',
  ring: 'rings',
  valve: 'valves',
  'cam bearing': 'camshaft bearings',
  lobe: 'cam lobes',
  bank: 'banks of cylinders',
  gear: 'gears',
  engine: 'the whole engine',
  step: 'steps of the assembly',
};

/** `3 flywheel end`, `3 top`: in a table whose heading says the family. */
export const tableName = ({ family, name, label }: Position): string =>
  family === ENGINE ? '' : [name, label ?? ''].join(' ').trim();

/** `main bearing clearance 5 (flywheel end)`, `turning torque after piston 1`, `ring end gap, cylinder 3 top ring`. */
export function namedAt(thing: string, position: Position): string {
  const { family } = position;
  if (family === ENGINE) return thing;
  const link = family === STEP ? ' after ' : family.axes.length > 1 ? ', ' : ' ';
  return `${thing}${link}${positionText(position)}`;
}

/** `3`, `3 top`, without its label; nothing for what is measured once an engine. */
export const shortName = ({ family, name }: Position): string => (family === ENGINE ? '' : name);
