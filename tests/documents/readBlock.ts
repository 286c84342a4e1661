import type { PositionReading } from '../../src/documents/session/reading.ts';
import { toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../src/quantity/units.ts';
import { type Files, refusalsOf, sessionOf, shopOf } from '../shopOf.ts';

const ENGINE = `kind: engine
name: Bench engine
units: { length: in, torque: lbf in }
layout: { cylinders: 4, mains: 5, crankpins: 4 }
labels: { main: { 1: front, 5: flywheel end } }
`;

const filesWith = (block: string, more: Files = {}): Files => ({
  'e/engine.yaml': ENGINE,
  's.yaml': 'kind: shop\n',
  'e/s.yaml': sessionOf('teardown', `- ${block}`),
  ...more,
});

/** What a block of readings says at its first position, as text: stations, directions and figures in inches. */
export function readingOf(block: string, more: Files = {}): PositionReading {
  const files = filesWith(block, more);
  const refused = refusalsOf(files);
  const reading = shopOf(files).engine?.sessions[0]?.blocks[0]?.positions[0];
  if (reading === undefined || refused.length > 0) throw new Error(`not read: ${refused.join(', ')}`);
  return reading;
}

/** Rows of figures in inches; `~` where nothing was taken. */
export const figuresOf = (
  reading: PositionReading,
  decimals = 4,
  unit = 'in',
): readonly (readonly string[])[] =>
  reading.rows.map((row) =>
    row.map((point) =>
      point === undefined ? '~' : toDecimal(fromBase(point.amount, unitNamed(unit)), decimals),
    ),
  );

/** The refusals of a session that holds this one block, each with the text that it marks: `value [3.1, 3.2]`. */
export function refusedIn(block: string, more: Files = {}): readonly string[] {
  const files = filesWith(block, more);
  return shopOf(files).diagnostics.map(({ code, place }) => {
    const line = (files[place.path] ?? '').split('\n')[place.line - 1] ?? '';
    return `${code.replace('document/', '')} ${line.slice(place.column - 1, place.endColumn - 1)}`;
  });
}
