import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, it } from 'vitest';
import { nodesOf, parsedMarkdown, textOf } from '../../output/escape/readMarkdown.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();
const trend = async (format: string): Promise<string> =>
  (await bench.call('trend', 'main_bearing_clearance', 'pump', '--format', format)).out;

/** A wears past its limit; B was measured once. */
beforeEach(() => {
  const session = (year: number, hours: number, at: string): string =>
    `kind: session\nstage: service\ndate: ${year}-03-01\nhours: ${hours}\nreadings:\n  - { measure: main_bearing_clearance, with: bore, at: ${at} }\n`;
  bench.put({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'instruments.yaml':
      'kind: instruments\ninstruments:\n  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }\n',
    'pump/engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: [A, B], crankpins: 1, cylinders: 1 }\n',
    'pump/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits: { main_bearing_clearance: { wear: { max: 0.0036 } } }\n',
    'pump/2020.yaml': session(2020, 1000, '{ A: 0.0030, B: 0.0020 }'),
    'pump/2021.yaml': session(2021, 3000, '{ A: 0.0034 }'),
    'pump/2022.yaml': session(2022, 5000, '{ A: 0.0038 }'),
  });
});

describe('tenths trend', () => {
  it('writes a row a reading as csv, with what JSON says of it', async () => {
    const rows = parse(await trend('csv'), { columns: true }) as Readonly<Record<string, string>>[];
    const { lines } = JSON.parse(await trend('json'));
    const points = lines.flatMap(
      ({ position, unit, points: of }: { position: string; unit: string; points: object[] }) =>
        of.map((point) => ({ position, unit, ...point })),
    );
    expect(points).toHaveLength(4);
    const text = (value: unknown): string => String(value ?? '');
    expect(rows).toEqual(
      points.map((point: Readonly<Record<string, unknown>>) =>
        expect.objectContaining(
          Object.fromEntries(Object.entries(point).map(([key, value]) => [key, text(value)])),
        ),
      ),
    );
  });

  it('writes as Markdown the table and the chart that it prints', async () => {
    const { children } = parsedMarkdown(await trend('markdown'));
    expect(children.map(({ type }) => type)).toEqual(['heading', 'paragraph', 'table', 'list', 'code']);
    const [, , table, , chart] = children;
    const text = await trend('text');
    for (const row of text.split('\n').filter((line) => /^ {2}[AB] /.test(line))) {
      for (const cell of row.trim().split(/ {2,}/)) expect(table && textOf(table)).toContain(cell);
    }
    expect(table && nodesOf(table)).toContain('strong');
    for (const line of (chart === undefined ? '' : textOf(chart)).split('\n').slice(-2))
      expect(text).toContain(line);
  });
});
