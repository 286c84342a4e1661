import { describe, expect, it } from 'vitest';
import { registryWith } from '../../../src/characteristics/registry.ts';
import { unitOfRow } from '../../../src/checks/judge/session.ts';
import { trendOf } from '../../../src/compare/trend.ts';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { LINES, PLAIN } from '../../../src/output/terminal/picture.ts';
import { widthOf } from '../../../src/output/terminal/width.ts';
import { CHART_PLAIN, drawTrend } from '../../../src/output/trend/trendChart.ts';
import { trendLines } from '../../../src/output/trend/trendText.ts';
import { trendView } from '../../../src/output/trend/trendView.ts';
import { type Files, reportOf, shop } from '../../compare/shop.ts';

const registry = registryWith([]);

function told(sessions: Files, measure: string, width = Number.POSITIVE_INFINITY, glyphs = LINES): string {
  const report = reportOf(shop(sessions));
  const characteristic = registry.find(measure);
  if (characteristic === undefined) throw new Error(measure);
  const style = { paint: paintWith(0), width, glyphs, detail: false };
  const trend = trendOf(report, registry, characteristic);
  const unitFor = (row: Parameters<typeof unitOfRow>[0]) => unitOfRow(row, report.engine);
  const view = trendView('Mill pump', trend, ['flywheel'], unitFor);
  return writtenLines(trendLines(view, trend, unitFor, style));
}

const service = (year: number, hours: number, readings: string, more = ''): Files => ({
  [`engine/${year}.yaml`]: `kind: session\nstage: service\ndate: ${year}-03-01\nhours: ${hours}\n${more}readings:\n${readings}`,
});
const clearance = (value: string, instrument = 'bore'): string =>
  `  - { measure: main_bearing_clearance, with: ${instrument}, at: { 1: ${value} } }\n`;

const WORN: Files = {
  ...service(2020, 1000, clearance('0.0030')),
  ...service(2021, 3000, clearance('0.0034', 'mic')),
  ...service(2022, 5000, clearance('0.0038')),
  ...service(2023, 7000, clearance('0.0042')),
  ...service(2024, 9000, clearance('0.0029'), 'replaced: [{ part: main shells }]\n'),
};

describe('a trend in print', () => {
  it('has a line for each part, says where a new one begins and what is not alike', () => {
    const text = told(WORN, 'main_bearing_clearance');
    expect(text).toMatch(/^main bearing clearance, in {2}Mill pump, by running hours\n/);
    expect(text).toMatch(
      / 1 {2}4 readings {2}0\.0030 → 0\.0042 .* reaches wear max 0\.0050 at about 11 000 h/,
    );
    expect(text).toMatch(/\n +1 reading +0\.0029 +one reading shows no trend\n/);
    expect(text).toContain('a new line since service 2024-03-01: main shells replaced (1)');
    expect(text).toContain('not like for like (1): other instrument: bore, mic');
    expect(text).toContain('flywheel: not known which readings that concerns, so no new line begins there');
    expect(text).toContain('a next reading at 9 000 h:');
  });

  it('says of out of round that the scatter of readings makes it larger', () => {
    const journal =
      '  - { measure: main_journal_diameter, with: mic, directions: [throw, square], at: { 1: [3.2478, 3.2476] } }\n';
    const text = told(service(2020, 1000, journal), 'main_journal_out_of_round');
    expect(text).toContain('a small value is less than it looks');
    expect(told(WORN, 'main_bearing_clearance')).not.toContain('than it looks');
  });

  it.each([60, 80, 120])('fits a window of %d columns, the limit drawn in', (width) => {
    const text = told(WORN, 'main_bearing_clearance', width);
    expect(Math.max(...text.split('\n').map(widthOf))).toBeLessThanOrEqual(width);
    expect(text).toMatch(/0\.0050 │─{10,}.* wear max\n/);
    expect(text).toContain('●');
  });

  it('in plain characters where the locale has no others', () => {
    const chart =
      told(WORN, 'main_bearing_clearance', 80, PLAIN).split('main bearing clearance 1\n')[1] ?? '';
    expect(chart).toMatch(/^ {2}0\.0050 \|-+/);
    expect(chart.split('\n').slice(0, 12).join('')).toMatch(/^[\x20-\x7e]+$/);
  });
});

describe('the chart', () => {
  const chart = {
    points: [
      { x: 0, y: 0 },
      { x: 5, y: 5 },
      { x: 10, y: 10 },
    ],
    line: undefined,
    limits: [{ y: 20, name: 'max' }],
    until: 20,
    formatX: String,
    formatY: String,
  };

  it('draws each reading where it belongs, from the bottom left', () => {
    const lines = drawTrend(chart, 34, CHART_PLAIN);
    expect(lines).toEqual([
      '  20 |------------------------ max',
      '     |',
      '     |',
      '     |',
      '     |',
      '     |            o',
      '     |',
      '     |',
      '     |      o',
      '     |',
      '   0 |o',
      '      0                     20',
    ]);
  });

  it('does not fall over readings that are all alike', () => {
    const flat = { ...chart, points: [{ x: 1, y: 3 }], limits: [], until: 1 };
    expect(drawTrend(flat, 40, CHART_PLAIN).join('\n')).toContain('3 |o');
  });
});
