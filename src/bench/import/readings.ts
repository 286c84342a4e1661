import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Csv, CsvCell } from '../../documents/csv.ts';
import { positionHelp } from '../../documents/engine/checkPosition.ts';
import { findPosition } from '../../layout/readKey.ts';
import type { PlannedBlock } from '../plan.ts';
import { keyOf, type PlannedPoint } from '../points.ts';
import type { Taken } from '../record/state.ts';
import { readCellValue } from './cellValue.ts';
import type { Mapping, ReadingColumn } from './mapping.ts';

/** What is wrong in a file, by its own row and column. */
export interface CellProblem {
  readonly line: number;
  readonly column: number;
  /** `row 12, Reading`. */
  readonly where: string;
  readonly message: string;
  readonly help: string | undefined;
}

export interface ImportedReadings {
  readonly taken: ReadonlyMap<string, Taken>;
  readonly blocks: readonly PlannedBlock[];
  readonly problems: readonly CellProblem[];
}

/** Rows of a spreadsheet as readings; `skip` of them, from the first, are in a session already. */
export function readingsOf(
  csv: Csv,
  mapping: Mapping,
  skip: number,
  engine: Engine,
  registry: Registry,
): ImportedReadings {
  const reader = new RowReader(csv.rows[0] ?? [], mapping, engine, registry);
  for (const row of csv.rows.slice(1 + skip)) reader.read(row);
  return {
    taken: reader.taken,
    blocks: reader.blocks(),
    problems: reader.problems,
  };
}

/** A file that breaks off. */
export const problemOfFile = ({ line, column, message }: Csv['problems'][number]): CellProblem => ({
  line,
  column,
  where: `line ${line}`,
  message,
  help: undefined,
});

class RowReader {
  readonly taken = new Map<string, Taken>();
  readonly #said = new Set<string>();
  readonly problems: CellProblem[] = [];
  readonly #headings: readonly CsvCell[];
  readonly #mapping: Mapping;
  readonly #engine: Engine;
  readonly #registry: Registry;

  constructor(headings: readonly CsvCell[], mapping: Mapping, engine: Engine, registry: Registry) {
    this.#headings = headings;
    this.#mapping = mapping;
    this.#engine = engine;
    this.#registry = registry;
    const wanted = [
      ...mapping.readings.map((each) => each.heading),
      mapping.measureColumn,
      ...mapping.positionColumns,
      mapping.stationColumn,
      mapping.directionColumn,
      mapping.withColumn,
      mapping.noteColumn,
    ];
    for (const heading of wanted) if (heading !== undefined) this.#requireHeading(heading);
  }

  #requireHeading(heading: string): void {
    const names = this.#headings.map((cell) => cell.text);
    const count = names.filter((name) => name === heading).length;
    if (count === 1) return;
    const message = count === 0 ? `there is no column ${heading}` : `there are ${count} columns ${heading}`;
    const help = didYouMean(heading, names) ?? `the headings are ${names.join(', ')}`;
    this.problems.push({ line: 1, column: 1, where: 'row 1', message, help });
  }

  read(row: readonly CsvCell[]): void {
    if (row.length > this.#headings.length) {
      const extra = row[this.#headings.length];
      if (extra !== undefined)
        this.#report(extra, '', `there are ${row.length} cells under ${this.#headings.length} headings`);
      return;
    }
    for (const column of this.#mapping.readings) this.#readCell(row, column);
  }

  #readCell(row: readonly CsvCell[], column: ReadingColumn): void {
    const cell = this.#cell(row, column.heading);
    if (cell === undefined || cell.text === '') return;
    const characteristic = this.#characteristicOf(row);
    if (characteristic === undefined) return;
    const point = this.#pointOf(row, column, characteristic);
    const text = this.#valueOf(cell, column.heading, characteristic);
    if (point === undefined || text === undefined) return;
    const key = keyOf(point);
    const before = this.taken.get(key);
    this.taken.set(key, {
      point,
      texts: [...(before?.texts ?? []), text],
      note: this.#text(row, this.#mapping.noteColumn) ?? before?.note,
      instrument: this.#text(row, this.#mapping.withColumn) ?? before?.instrument ?? this.#mapping.instrument,
      zero: undefined,
    });
  }

  #characteristicOf(row: readonly CsvCell[]): Characteristic | undefined {
    const { measureColumn, measures } = this.#mapping;
    const called = this.#text(row, measureColumn) ?? this.#mapping.measure ?? '';
    const id = measures.get(called) ?? called;
    const characteristic = this.#registry.find(id);
    if (characteristic !== undefined) return characteristic;
    const measureCell = this.#cell(row, measureColumn) ?? row[0];
    const help = didYouMean(called, [...measures.keys(), ...this.#registry.ids()]);
    const message = called === '' ? 'no characteristic is named' : `unknown characteristic ${called}`;
    return this.#report(measureCell, measureColumn ?? '', message, help);
  }

  #pointOf(
    row: readonly CsvCell[],
    column: ReadingColumn,
    { id, family }: Characteristic,
  ): PlannedPoint | undefined {
    const { positionColumns, stationColumn, directionColumn } = this.#mapping;
    const names = positionColumns.flatMap((heading) => this.#text(row, heading) ?? []);
    const name = names.join(' ');
    const { layout } = this.#engine.document;
    const position = name === '' ? layout.only(family) : findPosition(layout, family, name);
    if (position === undefined || position.name === '') {
      const help = positionHelp(layout, family, name);
      const cell = this.#cell(row, positionColumns[0]) ?? row[0];
      return this.#report(cell, positionColumns[0] ?? '', `the engine has no ${family.name} ${name}`, help);
    }
    return {
      measure: id,
      position,
      station: column.station ?? this.#text(row, stationColumn),
      direction: column.direction ?? this.#text(row, directionColumn),
    };
  }

  #valueOf(cell: CsvCell, heading: string, of: Characteristic): string | undefined {
    const value = readCellValue(cell.text, this.#mapping, of, this.#engine);
    return value.ok ? value.text : this.#report(cell, heading, value.message, value.help);
  }

  #cell(row: readonly CsvCell[], heading: string | undefined): CsvCell | undefined {
    return heading === undefined ? undefined : row[this.#headings.findIndex((each) => each.text === heading)];
  }

  #text(row: readonly CsvCell[], heading: string | undefined): string | undefined {
    return this.#cell(row, heading)?.text || undefined;
  }

  #report(cell: CsvCell | undefined, heading: string, message: string, help?: string): undefined {
    const { line, column, row } = cell ?? { line: 1, column: 1, row: 1 };
    const where = [`row ${row}`, heading].filter(Boolean).join(', ');
    // A row with several readings has its position but once.
    const said = JSON.stringify([where, message]);
    if (!this.#said.has(said)) this.problems.push({ line, column, where, message, help });
    this.#said.add(said);
  }

  /** A block for each characteristic, its grid from the stations and directions as they first come. */
  blocks(): readonly PlannedBlock[] {
    const points = [...this.taken.values()].map((each) => each.point);
    return unique(points.map((each) => each.measure)).flatMap((measure) => {
      const own = points.filter((each) => each.measure === measure);
      const family = this.#registry.find(measure)?.family;
      if (family === undefined) return [];
      return [
        {
          measure,
          family,
          positions: [...new Set(own.map((each) => each.position))],
          grid: {
            stations: unique(own.flatMap((each) => each.station ?? [])),
            directions: unique(own.flatMap((each) => each.direction ?? [])),
            fromShop: false,
          },
          instrument: undefined,
        },
      ];
    });
  }
}

const unique = (names: readonly string[]): readonly string[] => [...new Set(names)];
