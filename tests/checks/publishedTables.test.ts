import { describe, expect, it } from 'vitest';
import type { Row } from '../../src/checks/judge/row.ts';
import type { BandName } from '../../src/documents/limits/bands.ts';
import { type Fraction, fraction, parseDecimal } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';
import { type Files, rowsOf, sessionOf } from '../shopOf.ts';
import { type PlacedRow, type PublishedTable, TABLES } from './publishedTables.ts';

const SIDES = ['min', 'max'] as const;
type Side = (typeof SIDES)[number];

interface Cell {
  readonly band: BandName;
  readonly side: Side;
  readonly digits: string;
}

const cellsOf = (placed: PlacedRow): readonly Cell[] =>
  (['new', 'wear'] as const).flatMap((band) =>
    SIDES.flatMap((side, index) => {
      const digits = placed[band]?.[index];
      return digits === undefined ? [] : [{ band, side, digits }];
    }),
  );

const bandsOf = (placed: PlacedRow): string =>
  (['new', 'wear'] as const)
    .flatMap((band) => {
      const sides = cellsOf(placed)
        .filter((cell) => cell.band === band)
        .map(({ side, digits }) => `${side}: ${digits}`);
      return sides.length === 0 ? [] : [`${band}: { ${sides.join(', ')} }`];
    })
    .concat(placed.more ?? [])
    .join(', ');

/** The whole table as the limits of one engine. */
function limitsOf({ source, rows, own }: PublishedTable): string {
  const placed = rows.flatMap(([, ...places]) => places);
  const lines = [...new Set(placed.map(({ measure }) => measure))].map((measure) => {
    const its = placed.filter((each) => each.measure === measure);
    const under = (key: 'at' | 'sizes', entries: readonly (readonly [string, PlacedRow])[]) =>
      entries.length === 0
        ? []
        : [`${key}: { ${entries.map(([name, each]) => `${name}: { ${bandsOf(each)} }`).join(', ')} }`];
    const parts = [
      ...its.filter(({ at, size }) => at === undefined && size === undefined).map(bandsOf),
      ...under(
        'at',
        its.flatMap((each) => (each.at === undefined ? [] : [[each.at, each] as const])),
      ),
      ...under(
        'sizes',
        its.flatMap((each) => (each.size === undefined ? [] : [[each.size, each] as const])),
      ),
    ];
    return `  ${measure}: { ${parts.join(', ')} }`;
  });
  return `kind: limits\nsource: ${source}\n${own === undefined ? '' : `characteristics: { ${own} }\n`}limits:\n${lines.join('\n')}\n`;
}

/** An engine that came in with one figure of that table. */
const shopWith = (table: PublishedTable, { measure, where, fitted }: PlacedRow, reading: string): Files => ({
  'e/engine.yaml': `kind: engine\nname: By its table\nunits: { length: ${table.unit} }\nlayout: { ${table.layout} }\n`,
  'e/limits.yaml': limitsOf(table),
  'e/session.yaml': sessionOf(
    'teardown',
    `- { measure: ${measure}, ${where === undefined ? `value: ${reading}` : `at: { ${where}: ${reading} }`} }`,
    fitted === undefined ? '' : `fitted: { ${fitted} }\n`,
  ),
});

function judged(table: PublishedTable, placed: PlacedRow, reading: string): Row {
  const found = rowsOf(shopWith(table, placed, reading)).find(
    ({ characteristic, routes }) => characteristic.id === placed.measure && routes.length > 0,
  );
  if (found === undefined) throw new Error(`${placed.measure} finds no place`);
  return found;
}

/** Every length that is printed is a whole number of the base unit. */
function amount(digits: string, unit: 'in' | 'mm'): Fraction {
  const { n, d } = toBase(parseDecimal(digits), unitNamed(unit));
  return fraction(n / d);
}

const decimalsOf = (digits: string): number => digits.split('.')[1]?.length ?? 0;

/** One step of the finest digit of its row beyond a limit. */
function beyond({ side, digits }: Cell, placed: PlacedRow): string {
  const decimals = Math.max(...cellsOf(placed).map((cell) => decimalsOf(cell.digits)));
  return (Number(digits) + (side === 'min' ? -1 : 1) * 10 ** -decimals).toFixed(decimals);
}

const isWorn = (placed: PlacedRow, side: Side): boolean =>
  cellsOf(placed).some((cell) => cell.band === 'wear' && cell.side === side);
const isNew = (placed: PlacedRow, side: Side): boolean =>
  cellsOf(placed).some((cell) => cell.band === 'new' && cell.side === side);

describe.each(TABLES.map((table) => [table.source, table.count, table] as const))(
  'the table of %s, %i rows',
  (_, count, table) => {
    it('is entered whole: as many rows as it prints, and every row finds a place', () => {
      expect(table.rows).toHaveLength(count);
      expect(table.rows.filter(([, ...places]) => places.length === 0)).toEqual([]);
      expect(new Set(table.rows.map(([printed]) => printed)).size).toBe(count);
    });

    const places = table.rows.flatMap(([printed, ...placed]) =>
      placed.map((each) => [`${printed}: ${each.measure} ${each.where ?? ''}`.trim(), each] as const),
    );

    it.each(places)('limits by its figures, to the digit: %s', (_name, placed) => {
      const cells = cellsOf(placed);
      expect(cells.length).toBeGreaterThan(0);
      const { limits, position, characteristic } = judged(table, placed, cells[0]?.digits ?? '');
      expect(characteristic.family.isSingle ? undefined : position.name).toBe(placed.where);
      const inForce = (['new', 'wear'] as const).flatMap((band) =>
        SIDES.flatMap((side) => {
          const limit = limits.bands[band]?.[side];
          return limit === undefined ? [] : [{ band, side, amount: limit.amount }];
        }),
      );
      expect(inForce).toEqual(
        cells.map(({ band, side, digits }) => ({ band, side, amount: amount(digits, table.unit) })),
      );
    });

    it.each(places)('judges on each of its figures, and a last digit beyond: %s', (_name, placed) => {
      const verdictAt = (reading: string) => judged(table, placed, reading).judgement.verdict;
      for (const cell of cellsOf(placed)) {
        const { band, side, digits } = cell;
        const on = band === 'wear' && isNew(placed, side) ? 'worn' : 'ok';
        expect([digits, verdictAt(digits)]).toEqual([digits, on]);
        const past = band === 'new' && isWorn(placed, side) ? 'worn' : 'out';
        expect([digits, verdictAt(beyond(cell, placed))]).toEqual([digits, past]);
      }
    });
  },
);
