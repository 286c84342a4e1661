import { expect } from 'vitest';
import { registryWith } from '../../src/characteristics/registry.ts';
import { ENGINE } from '../../src/layout/family.ts';
import { toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../src/quantity/units.ts';
import { engineIn, rowsOf, sessionOf } from '../shopOf.ts';

/** Readings by characteristic, as a session writes them at the first position. */
export type Readings = Readonly<Record<string, string>>;

export interface Wanted {
  readonly measure: string;
  /** Of its figure; the readings are in it too where it is a length, else in millimetres. */
  readonly unit: string;
}

const registry = registryWith([]);

/** What readings leave, through the whole line from YAML to the judged row, to as many decimals as `like`. */
export function workedOut({ measure, unit }: Wanted, readings: Readings, like: string, more = ''): string {
  const rows = rowsOf({
    'e/engine.yaml': engineIn(unit === 'in' ? 'in' : 'mm', more),
    'e/s.yaml': sessionOf('rebuild', Object.entries(readings).map(blockText).join('\n')),
  });
  const [judged] = rows.find(({ characteristic }) => characteristic.id === measure)?.routes ?? [];
  if (judged === undefined) throw new Error(`no ${measure} was worked out`);
  expect(judged.least).toEqual(judged.greatest);
  const decimals = like.includes('.') ? like.length - like.indexOf('.') - 1 : 0;
  return toDecimal(fromBase(judged.least, unitNamed(unit)), decimals);
}

function blockText([id, reading]: readonly [string, string]): string {
  const family = registry.find(id)?.family;
  if (family === ENGINE) return `- { measure: ${id}, value: ${reading} }`;
  return `- { measure: ${id}, at: { ${family?.axes.at(-1) === 'ring' ? '1 top' : '1'}: ${reading} } }`;
}
