import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXPORT_COLUMNS } from '../src/output/export/exportRow.ts';
import { callHere } from './inProcess.ts';
import { oldQuay } from './oldQuay/oldQuay.ts';
import { commit, git } from './shell/gitShop.ts';

const project = fileURLToPath(new URL('..', import.meta.url));
const page = join(project, 'docs/fleet.md');
const kept = join(project, 'docs/shops/old-quay');
/** Each export judges all of its engines anew. */
const TWO = ['reservoir-pump-2', 'drainage-pump-8'];
const REBUILD = 'engines/reservoir-pump-2/sessions/2026-03-14-rebuild.yaml';

let folder = '';
let shop = '';
let quay = '';
let connection: DuckDBConnection;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tenths-fleet-'));
  shop = join(folder, 'examples');
  quay = join(folder, 'old-quay');
  cpSync(join(project, 'examples'), shop, { recursive: true });
  cpSync(join(project, 'docs/shops/old-quay'), quay, { recursive: true });
  connection = await (await DuckDBInstance.create(':memory:')).connect();
});

afterAll(() => {
  connection.closeSync();
  rmSync(folder, { recursive: true });
});

const exportedIn = async (cwd: string, ...words: readonly string[]): Promise<string> => {
  const { stdout, stderr, exitCode } = await callHere(['export', ...words], { cwd });
  expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
  return stdout;
};

const exported = (...words: readonly string[]): Promise<string> => exportedIn(shop, ...words);

/** Its files are named from the working directory, which is not the shop. */
const asked = (sql: string) =>
  connection.runAndReadAll(sql.replaceAll("'readings.parquet'", `'${quay}/readings.parquet'`));

/** As tables are written in the page: columns two spaces apart, numbers to the right. */
async function answer(sql: string): Promise<string> {
  const result = await asked(sql);
  const rows = result.getRows().map((row) => row.map((cell) => (cell === null ? '' : String(cell))));
  const isNumber = result.columnTypes().map((type) => !String(type).startsWith('VARCHAR'));
  const table = [result.columnNames(), ...rows];
  const widths = isNumber.map((_, column) => Math.max(...table.map((row) => row[column]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) =>
        isNumber[column] ? cell.padStart(widths[column] ?? 0) : cell.padEnd(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd();
  return `${table.map(line).join('\n')}\n`;
}

interface Checked {
  readonly diagnostics: readonly unknown[];
  readonly engines: readonly {
    readonly name: string;
    readonly state: {
      readonly findings: readonly {
        severity: string;
        code: string;
        measure: string | null;
        position: string | null;
      }[];
    };
  }[];
}

/** What check says of where the engines stand, but for remarks. Each is true: see the README of the shop. */
const MEANT = {
  'Drain pump': ['instrument/off'],
  'Dredger pump': [],
  'Ferry generator': ['session/unmeasured main_journal_diameter', 'session/unmeasured rod_bearing_clearance'],
  'Fog signal': [],
  'Ice plant': [
    'reading/out cylinder_bore 3',
    'concession/expired cylinder_bore 3',
    'reading/undecided cylinder_bore 1',
  ],
  'Lock gate pump': [],
  'Quay crane': ['session/unmeasured main_journal_diameter', 'reading/undecided crankpin_diameter 2'],
  'Saw bench': [],
  'Slip winch': ['reading/undecided main_journal_diameter 5'],
  'Tide gate generator': [
    'reading/out cylinder_bore 6',
    'reading/undecided cylinder_bore 1',
    'reading/undecided cylinder_bore 4',
  ],
};

function onDisk(): Record<string, string> {
  const names = readdirSync(kept, { recursive: true, encoding: 'utf8' }).map((each) =>
    each.replaceAll('\\', '/'),
  );
  return Object.fromEntries(
    names.filter((each) => /\.\w+$/.test(each)).map((each) => [each, readFileSync(join(kept, each), 'utf8')]),
  );
}

function write(files: Readonly<Record<string, string>>): void {
  rmSync(kept, { recursive: true });
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(kept, name)), { recursive: true });
    writeFileSync(join(kept, name), text);
  }
}

describe('the shop of ten engines (TENTHS_UPDATE=1 writes it)', () => {
  it('is what is made of it', () => {
    if (process.env.TENTHS_UPDATE === '1') write(oldQuay());
    expect(onDisk()).toEqual(oldQuay());
  });

  it('has the findings that it is meant to have, and no other', async () => {
    const { stdout, exitCode } = await callHere(['check', '--format', 'json'], { cwd: quay });
    const { engines, diagnostics } = JSON.parse(stdout) as Checked;
    expect({ exitCode, diagnostics }).toEqual({ exitCode: 1, diagnostics: [] });
    const found = engines.map(({ name, state }): [string, readonly string[]] => [
      name,
      state.findings.flatMap(({ severity, code, measure, position }) =>
        severity === 'remark' ? [] : [[code, measure, position].filter(Boolean).join(' ')],
      ),
    ]);
    expect(Object.fromEntries(found)).toEqual(MEANT);
  });
});

describe('the page of a fleet (TENTHS_UPDATE=1 writes its answers)', () => {
  const QUESTION = /```sql\n([^`]+)```\n\n```text\n([^`]*)```/g;

  it('prints what its questions are answered', async () => {
    await exportedIn(quay, '--to', 'readings.parquet');
    const text = readFileSync(page, 'utf8');
    const questions = [...text.matchAll(QUESTION)];
    expect(questions).toHaveLength(3);
    let answered = text;
    for (const [whole, sql = '', shown = ''] of questions) {
      const found = await answer(sql);
      if (process.env.TENTHS_UPDATE === '1')
        answered = answered.replace(whole, whole.replace(`text\n${shown}`, `text\n${found}`));
      else expect(shown).toBe(found);
    }
    if (answered !== text) writeFileSync(page, answered);
  });
});

describe('the table', () => {
  it('says the same in Parquet, in CSV and in JSON, cell by cell', async () => {
    const hostile = readFileSync(join(shop, REBUILD), 'utf8').replace(/^by: .*/m, 'by: "=1+1, \\"RK\\""');
    writeFileSync(join(shop, REBUILD), hostile);
    for (const ending of ['parquet', 'csv', 'jsonl'])
      await exported('reservoir-pump-2', '--to', `table.${ending}`);
    const text = (ending: string) => readFileSync(join(shop, `table.${ending}`), 'utf8');
    const ofJson = text('jsonl')
      .trimEnd()
      .split('\n')
      .map((line) => Object.values(JSON.parse(line)));
    const [head, ...ofCsv] = parse(text('csv')) as string[][];
    const ofParquet = await connection.runAndReadAll(`from '${shop}/table.parquet'`);
    const names = EXPORT_COLUMNS.map(({ name }) => name);
    expect(head).toEqual(names);
    expect(ofParquet.columnNames()).toEqual(names);
    expect(ofJson.length).toBeGreaterThan(300);
    expect(ofParquet.getRows()).toEqual(ofJson);
    expect(ofCsv.map((row) => row.map(fromCsv))).toEqual(ofJson);
    expect(ofJson.flat()).toContain('=1+1, "RK"');
    expect(ofCsv.flat()).not.toContain('=1+1, "RK"');
  });

  /** An empty cell is nothing, and an apostrophe before what begins like a formula is no part of it. */
  const fromCsv = (cell: string, column: number): string | number | null => {
    if (cell === '') return null;
    return EXPORT_COLUMNS[column]?.type === 'number' ? Number(cell) : cell.replace(/^'(?=[=+\-@])/, '');
  };

  it('names the commit that it was read from, and what is on disk is none', async () => {
    git(shop, 'init', '-q');
    git(shop, 'config', 'user.name', 'nobody');
    git(shop, 'config', 'user.email', 'nobody@example.org');
    const head = commit(shop, 'The shop');
    await exported('drainage-pump-8', '--to', 'disk.csv');
    await exported('drainage-pump-8', '--to', 'commit.csv', '--at', 'HEAD');
    const commitsIn = (file: string) => {
      const rows: Record<string, string>[] = parse(readFileSync(join(shop, file), 'utf8'), { columns: true });
      return [...new Set(rows.map((row) => row.commit))];
    };
    expect([commitsIn('disk.csv'), commitsIn('commit.csv')]).toEqual([[''], [head]]);
  });

  it('is read as one where it is written a file an engine, and only what changed is written again', async () => {
    await exported(...TWO, '--to', 'whole.parquet');
    const first = await exported(...TWO, '--to', 'parts.parquet', '--partition');
    expect(first.match(/^written /gm)).toHaveLength(2);
    const sql = (from: string) => `select session, measure, position, value_si from ${from} order by all`;
    const whole = await connection.runAndReadAll(sql(`'${shop}/whole.parquet'`));
    const parts = await connection.runAndReadAll(sql(`read_parquet('${shop}/parts/*/*.parquet')`));
    expect(parts.getRows()).toEqual(whole.getRows());
    const other = join(shop, 'parts/engine=engines%2Fdrainage-pump-8/parts.parquet');
    const before = statSync(other).mtimeMs;
    writeFileSync(
      join(shop, REBUILD),
      readFileSync(join(shop, REBUILD), 'utf8').replace(/^by: .*/m, 'by: JM'),
    );
    const again = await exported(...TWO, '--to', 'parts.parquet', '--partition');
    expect(again.match(/^written .*/gm)).toEqual([
      'written    parts/engine=engines%2Freservoir-pump-2/parts.parquet',
    ]);
    expect(statSync(other).mtimeMs).toBe(before);
  });
});
