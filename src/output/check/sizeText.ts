import type { Row } from '../../checks/judge/row.ts';
import { BAND_NAMES } from '../../documents/limits/bands.ts';
import { ruleOf } from '../../documents/limits/gradedBands.ts';
import type { Unit } from '../../quantity/units.ts';

/** `limits of 0.010 under, moved by rule from standard`: which service size the limits hold for; empty for standard. */
export function sizeText({ size, limits: { bands, inForce } }: Row, unit: Unit): readonly string[] {
  if (size.by.n === 0n) return [];
  const stated = BAND_NAMES.filter((name) => name !== 'last' && bands[name] !== undefined);
  if (stated.length === 0) return [];
  const moved = stated.filter((name) => inForce.rules[name] === 'moved');
  const which = moved.length === stated.length ? '' : `${moved.join(' and ')} `;
  const assumed = size.assumedFrom === undefined ? [] : [`assumed from its ${size.assumedFrom.label}`];
  const rule = moved.length === 0 ? [] : [`${which}moved by rule from standard`];
  return [[`limits of ${size.text(unit)}`, ...assumed, ...rule].join(', ')];
}

/** The same as data; null for a part of standard size. */
export const gradedJson = ({ size, limits }: Row, unit: Unit) =>
  size.by.n === 0n
    ? null
    : { size: size.text(unit), rule: ruleOf(limits.inForce), assumed: size.assumedFrom !== undefined };
