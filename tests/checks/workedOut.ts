import { expect } from 'vitest';
import { registryWith } from '../../src/characteristics/registry.ts';
import type { Family } from '../../src/layout/family.ts';
import { toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase } from '../../src/quantity/units.ts';
import { unitOfExample } from '../characteristics/exampleGrid.ts';
import { limitsOf, rowsOf, sessionOf } from '../shopOf.ts';

/** Readings by characteristic, as a session writes them at the first position. */
export type Readings = Readonly<Record<string, string>>;

export interface Wanted {
  readonly measure: string;
  /** Of its figure; none of a plain number. */
  readonly unit: string;
  /** Of the readings, where it is not that of the figure. */
  readonly length?: 'in' | 'mm';
}

export interface Around {
  /** Nominal sizes of the engine document. */
  readonly sizes?: Readonly<Record<string, string>>;
  /** What some figures are worked out for; else the figure itself has limits wide enough for anything. */
  readonly limits?: string;
}

/** An engine that has one of everything that is measured. */
export const WHOLE_LAYOUT =
  'layout: { cylinders: 4, mains: 3, crankpins: 4, cam_bearings: 3, lobes: 2, gears: [1, 2], valves: { 1: [I, E], 2: [I, E] } }\n';

const registry = registryWith([]);

/** What readings leave, through the whole line from YAML to the judged row, to as many decimals as `like`. */
export function workedOut(wanted: Wanted, readings: Readings, like: string, around: Around = {}): string {
  const { measure, unit, length = unit === 'in' ? 'in' : 'mm' } = wanted;
  const sizes = Object.entries(around.sizes ?? {}).map(([name, size]) => `${name}: ${size}`);
  const rows = rowsOf({
    'e/engine.yaml': `kind: engine\nname: Bench engine\nunits: { length: ${length}, torque: lbf in }\n${WHOLE_LAYOUT}${sizes.length === 0 ? '' : `sizes: { ${sizes.join(', ')} }\n`}`,
    'e/limits.yaml': limitsOf(around.limits ?? `${measure}: { new: { max: ${`1000000 ${unit}`.trim()} } }`),
    'e/s.yaml': sessionOf('rebuild', Object.entries(readings).map(blockText).join('\n')),
  });
  const [judged] = rows.find(({ characteristic }) => characteristic.id === measure)?.routes ?? [];
  if (judged === undefined) throw new Error(`no ${measure} was worked out`);
  expect(judged.least).toEqual(judged.greatest);
  const decimals = like.includes('.') ? like.length - like.indexOf('.') - 1 : 0;
  return toDecimal(fromBase(judged.least, unitOfExample(unit)), decimals);
}

const FIRST: Readonly<Record<string, string>> = { ring: 'top', valve: 'I', bank: 'all' };

/** The first position of a family on that engine. */
export const firstOf = ({ axes }: Family): string => axes.map((axis) => FIRST[axis] ?? '1').join(' ');

function blockText([id, reading]: readonly [string, string]): string {
  const family = registry.find(id)?.family;
  if (family === undefined || family.isSingle) return `- { measure: ${id}, value: ${reading} }`;
  return `- { measure: ${id}, at: { ${firstOf(family)}: ${reading} } }`;
}
