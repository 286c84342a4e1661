import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { callHere } from '../../../inProcess.ts';
import { type CheckOutput, lineOf, placeText, saidIn, shownIn } from './checkOutput.ts';
import { readCommand } from './readCommand.ts';
import { type Element, elementsOf, readXml } from './readXml.ts';
import { validSarif } from './validSarif.ts';

const cases = fileURLToPath(new URL('../../../cases/', import.meta.url));

/** Every code of a finding and of a problem with a document stands in one of the two, and few of one in the last. */
const RUNS: readonly (readonly [shop: string, words: readonly string[]])[] = [
  ['findings', ['--all']],
  ['documents', ['--all']],
  ['findings', []],
  ['findings/torque-out', ['--all']],
  ['findings/reading-out', []],
];

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tenths-formats-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Every format, written in one run. */
async function writtenFor(cwd: string, words: readonly string[]) {
  const formats = ['json', 'junit', 'sarif', 'github', 'csv'];
  const into = formats.flatMap((format) => ['--format', `${format}:${join(folder, format)}`]);
  const { stdout, stderr } = await callHere(['check', '--strict', ...words, ...into], { cwd });
  expect(stdout + stderr).toBe('');
  const read = (format: string): string => readFileSync(join(folder, format), 'utf8');
  const output: CheckOutput = JSON.parse(read('json'));
  return { output, junit: read('junit'), sarif: read('sarif'), github: read('github'), csv: read('csv') };
}

it.each(RUNS)(
  'of the cases in %s, with %j, every format for programs tells what JSON tells',
  async (shop, words) => {
    const { output, junit, sarif, github, csv } = await writtenFor(join(cases, shop), words);
    expectJunit(readXml(junit), output);
    expectSarif(JSON.parse(sarif), output);
    expectGithub(github.split('\n').slice(0, -1), output);
    expectCsv(parse(csv, { columns: true }), output);
  },
);

it('annotates first what lies farthest beyond its limit, and counts what a step would not show', async () => {
  // Out by 1 to 12 tenths, in no order.
  const tenths = [3, 11, 7, 1, 12, 5, 9, 2, 10, 6, 8, 4];
  const at = tenths.map((by, index) => `${index + 1}: ${(0.0038 + by / 10_000).toFixed(4)}`).join(', ');
  const files = {
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: 12, crankpins: 1, cylinders: 1 }\n',
    'limits.yaml':
      'kind: limits\nsource: Invented.\nlimits: { main_bearing_clearance: { new: 0.0020 to 0.0038 } }\n',
    'one.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings: [{ measure: main_bearing_clearance, at: { ${at} } }]\n`,
  };
  const shop = mkdtempSync(join(folder, 'shop-'));
  for (const [path, text] of Object.entries(files)) writeFileSync(join(shop, path), text);
  const { stdout } = await callHere(['check', '--format', 'github'], { cwd: shop });
  const lines = stdout.split('\n');
  const errors = lines.flatMap((line) => readCommand(line) ?? []).filter(({ name }) => name === 'error');
  const worst = [12, 11, 10, 9, 8, 7, 6, 5, 4, 3];
  expect(errors.map(({ message }) => /clearance (\d+):/.exec(message)?.[1])).toEqual(
    worst.map((by) => `${tenths.indexOf(by) + 1}`),
  );
  expect(lines).toContain('and 2 more errors');
});

function expectJunit(root: Element, output: CheckOutput): void {
  const cases = elementsOf(root, 'testcase');
  const nameOf = ({ attributes }: Element): string => `${attributes.classname} ${attributes.name}`;
  const told = (names: readonly string[]): readonly string[] =>
    cases
      .flatMap(({ children }) => children.filter(({ name }) => names.includes(name)).flatMap(linesOf))
      .sort();
  const failing = saidIn(output).filter(({ severity }) => severity !== 'remark');
  expect(told(['failure', 'error'])).toEqual(failing.map(lineOf).sort());
  expect(told(['failure', 'error', 'system-out'])).toEqual(saidIn(output).map(lineOf).sort());
  const values = shownIn(output).flatMap(({ engine, called, rows }) =>
    rows.map(({ measure, position }) =>
      `${called === 'state' ? `${engine}.state` : called.replace(/\.yaml$/, '')} ${measure} ${position}`.trim(),
    ),
  );
  const named = new Set(cases.map(nameOf));
  expect(named.size).toBe(cases.length);
  expect(values.filter((each) => !named.has(each))).toEqual([]);
  for (const { children } of cases) {
    expect(children.filter(({ name }) => name !== 'system-out').length).toBeLessThan(2);
  }
  for (const counted of [root, ...elementsOf(root, 'testsuite')]) {
    const count = (name: string): string => `${elementsOf(counted, name).length}`;
    const counts = { tests: count('testcase'), failures: count('failure'), errors: count('error') };
    expect(counted.attributes).toMatchObject({ ...counts, skipped: count('skipped') });
  }
}

const linesOf = ({ text }: Element): readonly string[] => text.split('\n').filter((line) => line !== '');

interface SarifPlace {
  readonly physicalLocation: {
    readonly artifactLocation: { readonly uri: string };
    readonly region: { readonly startLine: number; readonly startColumn: number };
  };
}

interface SarifResult {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: 'error' | 'warning' | 'note';
  readonly message: { readonly text: string };
  readonly locations: readonly SarifPlace[];
  readonly relatedLocations?: readonly SarifPlace[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
}

const SEVERITIES = { error: 'error', warning: 'warning', note: 'remark', notice: 'remark' } as const;

function expectSarif(
  log: { runs: { results: SarifResult[]; tool: { driver: { rules: { id: string }[] } } }[] },
  output: CheckOutput,
): void {
  expect(validSarif(log)).toEqual([]);
  const [{ results, tool } = { results: [], tool: { driver: { rules: [] } } }] = log.runs;
  const placeOf = ({ physicalLocation: { artifactLocation, region } }: SarifPlace): string =>
    `${decodeURIComponent(artifactLocation.uri)}:${region.startLine}:${region.startColumn}`;
  const told = results.map(({ level, ruleId, locations, message }) => {
    const text = message.text.replaceAll('{{', '{').replaceAll('}}', '}').replaceAll('\\](', '](');
    return `${SEVERITIES[level]} ${ruleId} ${locations.map(placeOf).join()} ${text}`;
  });
  expect(told.sort()).toEqual(saidIn(output).map(lineOf).sort());
  const limits = saidIn(output).flatMap(({ limit_place: at }) => (at == null ? [] : [placeText(at)]));
  expect(results.flatMap(({ relatedLocations = [] }) => relatedLocations.map(placeOf)).sort()).toEqual(
    limits.sort(),
  );
  for (const { ruleIndex, ruleId } of results) expect(tool.driver.rules[ruleIndex]?.id).toBe(ruleId);
  const prints = results.map(({ partialFingerprints }) => JSON.stringify(partialFingerprints));
  expect(new Set(prints).size).toBe(prints.length);
}

function expectGithub(lines: readonly string[], output: CheckOutput): void {
  const commands = lines.flatMap((line) => readCommand(line) ?? []);
  const all = saidIn(output).map((each) => lineOf({ ...each, place: { ...each.place, column: 0 } }));
  for (const { name, properties, message } of commands) {
    const severity = SEVERITIES[name as keyof typeof SEVERITIES];
    expect(all).toContain(
      `${severity} ${properties.title} ${properties.file}:${properties.line}:0 ${message}`,
    );
  }
  const rests = (['error', 'warning', 'remark'] as const).flatMap((severity) => {
    const count = saidIn(output).filter((each) => each.severity === severity).length;
    const told = commands.filter(({ name }) => SEVERITIES[name as keyof typeof SEVERITIES] === severity);
    expect(told).toHaveLength(Math.min(10, count));
    return count <= 10 ? [] : [`and ${count - 10} more ${severity}${count === 11 ? '' : 's'}`];
  });
  expect(lines.filter((line) => readCommand(line) === undefined)).toEqual(rests);
}

function expectCsv(rows: readonly Readonly<Record<string, string>>[], output: CheckOutput): void {
  const expected = shownIn(output).flatMap(({ engine, called, stage, date, rows: of, findings }) =>
    of.map((row) => ({
      ...{ engine, session: called, stage, date },
      ...{ measure: row.measure, position: row.position, unit: row.unit, verdict: row.verdict },
      ...{ least: row.least, mean: row.mean, greatest: row.greatest, U: row.U },
      ...{ min: row.limits.min?.value, max: row.limits.max?.value },
      findings: findings
        .filter((each) => each.measure === row.measure && each.position === row.position)
        .map(({ code }) => code)
        .join(' '),
    })),
  );
  const asText = (row: object): object =>
    Object.fromEntries(Object.entries(row).map(([key, value]) => [key, String(value ?? '')]));
  const keys = Object.keys(expected[0] ?? {});
  expect(rows.map((row) => Object.fromEntries(keys.map((key) => [key, row[key]])))).toEqual(
    expected.map(asText),
  );
}
