import { ENGINE, STEP } from './family.ts';
import { fullName, type Position } from './position.ts';

/** `3 (flywheel end)`, `cylinder 3 top ring`; nothing for what is measured once an engine. */
export function positionText(position: Position): string {
  const { family, name, label } = position;
  if (family === ENGINE) return '';
  const whole = family.axes.length > 1 ? fullName(position) : name;
  return label === undefined ? whole : `${whole} (${label})`;
}

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
