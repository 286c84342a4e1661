import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registryWith } from '../../src/characteristics/registry.ts';
import { dayText, type Trend, type TrendAxis, type TrendLine, trendOf } from '../../src/compare/trend.ts';
import { fitTrend } from '../../src/compare/trendFit.ts';
import { confidenceInterval, inversePrediction } from '../../src/measurement/linePrediction.ts';
import { readPoints } from '../measurement/csv.ts';
import { mustFit } from '../measurement/mustFit.ts';
import { ENGINE, type Files, reportOf, session, shop } from './shop.ts';

const registry = registryWith([]);

function trendIn(files: Files, measure: string, axis?: TrendAxis): Trend {
  const characteristic = registry.find(measure);
  if (characteristic === undefined) throw new Error(measure);
  return trendOf(reportOf(files), registry, characteristic, axis);
}

/** A service session a year from 2020: its hours and the bore of cylinder 1, and what else it says. */
function service(year: number, hours: number | undefined, bore: string, more = ''): Files {
  const stated = hours === undefined ? '' : `hours: ${hours}\n`;
  const text = `kind: session\nstage: service\ndate: ${year}-03-01\n${stated}${more}`;
  const readings = more.includes('readings:')
    ? ''
    : `readings:\n  - { measure: cylinder_bore, with: bore, at: { 1: ${bore} } }\n`;
  return { [`engine/${year}.yaml`]: text + readings };
}

const LIMITS = {
  'engine/limits.yaml':
    'kind: limits\nsource: invented\nlimits: { cylinder_bore: { new: 4.1250 to 4.1262, wear: { max: 4.1310 } } }\n',
};

const inShop = (...sessions: readonly Files[]): Files => ({
  ...shop(Object.assign({}, ...sessions)),
  ...LIMITS,
});

const linesOf = (files: Files): readonly TrendLine[] => trendIn(files, 'cylinder_bore').lines;

const INCH = 254_000_000;

describe('the fit of a trend', () => {
  it('of readings that all weigh alike is the published one, with its inverse prediction', () => {
    // Graybill & Iyer, "Regression Analysis" (1994), chapter 6: tests/measurement/linePrediction.test.ts has the figures.
    const points = readPoints('graybill-iyer-thermometer', 'temp', 'read').toSorted((a, b) => a.x - b.x);
    const line = mustFit(points);
    const alike = [0, 0.1].map((u) =>
      fitTrend(
        points.map((each) => ({ ...each, own: u })),
        { min: undefined, max: 120 },
      ),
    );
    const { x, interval } = inversePrediction(line, 120);
    for (const { slope, outlook, last } of alike) {
      expect(slope).toBeCloseTo(line.slope, 12);
      expect(outlook).toMatchObject({ kind: 'reached', side: 'max' });
      if (outlook.kind !== 'reached') continue;
      expect([outlook.x, outlook.interval.lower, outlook.interval.upper]).toEqual(
        [x, interval?.lower, interval?.upper].map((each) => expect.closeTo(each ?? 0, 9)),
      );
      const at = confidenceInterval(line, points.at(-1)?.x ?? 0).interval;
      expect(last).toEqual({
        lower: expect.closeTo(at?.lower ?? 0, 9),
        upper: expect.closeTo(at?.upper ?? 0, 9),
      });
    }
  });

  it('of readings that are closer to a line than their instrument allows stands on the instrument', () => {
    const points = [0, 1000, 2000].map((x) => ({ x, y: x * 2, own: 300 }));
    const { slopeHalfWidth, outlook } = fitTrend(points, { min: undefined, max: 10_000 });
    // Student's t for one degree of freedom, 12.706; Sxx = 2 000 000.
    expect(slopeHalfWidth).toBeCloseTo((12.7062 * 300) / Math.sqrt(2_000_000), 3);
    expect(outlook.kind).toBe('no trend');
    // Without an uncertainty of their own the scatter, which is none, decides.
    expect(
      fitTrend(
        points.map((each) => ({ ...each, own: 0 })),
        { min: undefined, max: 10_000 },
      ).outlook,
    ).toMatchObject({
      kind: 'reached',
      x: 5000,
    });
  });

  it('weighs a reading by its uncertainty', () => {
    const points = [
      { x: 0, y: 0, own: 1 },
      { x: 1, y: 1, own: 1 },
      { x: 2, y: 2, own: 1 },
      { x: 3, y: 30, own: 1000 },
    ];
    expect(fitTrend(points, { min: undefined, max: undefined }).slope).toBeCloseTo(1, 3);
    const alike = points.map((each) => ({ ...each, own: 1 }));
    expect(fitTrend(alike, { min: undefined, max: undefined }).slope).toBeCloseTo(9.1, 6);
  });

  it.each([
    [[], 'one reading'],
    [[[100, 1]], 'one reading'],
    [
      [
        [100, 1],
        [200, 5],
      ],
      'two readings',
    ],
    [
      [
        [100, 1],
        [100, 5],
        [100, 6],
      ],
      'no span',
    ],
    [
      [
        [100, 5],
        [200, 1],
        [300, 5],
        [400, 2],
      ],
      'no trend',
    ],
    [
      [
        [100, 1],
        [200, 2],
        [300, 3.1],
        [400, 4],
      ],
      'reached',
    ],
    [
      [
        [100, 9],
        [200, 10],
        [300, 11.1],
        [400, 12],
      ],
      'beyond',
    ],
    [
      [
        [100, 4],
        [200, 3],
        [300, 2.1],
        [400, 1],
      ],
      'away',
    ],
  ] as const)('of %j: %s', (points, kind) => {
    const readings = points.map(([x, y]) => ({ x, y, own: 0.001 }));
    expect(fitTrend(readings, { min: undefined, max: 11 }).outlook.kind).toBe(kind);
  });

  it('says of a limit that lies beyond the span of the readings that it is far ahead', () => {
    const readings = [0, 100, 200, 300].map((x, index) => ({ x, y: x + (index % 2), own: 0.1 }));
    expect(fitTrend(readings, { min: undefined, max: 500 }).outlook).toMatchObject({ isFar: false });
    expect(fitTrend(readings, { min: undefined, max: 700 }).outlook).toMatchObject({ isFar: true });
  });

  it('takes a last reading exactly on its limit for inside', () => {
    const up = [10, 20, 30].map((y, index) => ({ x: index, y, own: 0.01 }));
    const down = up.map((each) => ({ ...each, y: 40 - each.y }));
    expect(fitTrend(up, { min: undefined, max: 30 }).outlook).toMatchObject({ kind: 'reached', side: 'max' });
    expect(fitTrend(up, { min: undefined, max: 29.999 }).outlook.kind).toBe('beyond');
    expect(fitTrend(down, { min: 10, max: undefined }).outlook).toMatchObject({
      kind: 'reached',
      side: 'min',
    });
    expect(fitTrend(down, { min: 10.001, max: undefined }).outlook.kind).toBe('beyond');
  });

  it('names no date where the slope is only just smaller than what it is uncertain by', () => {
    // Four points a unit apart: Sxx 5, Student's t for two degrees of freedom 4.3027.
    const reach = (4.3027 * 1) / Math.sqrt(5);
    const rising = (slope: number, limits: { min?: number; max?: number }) =>
      fitTrend(
        [0, 1, 2, 3].map((x) => ({ x, y: slope * x, own: 1 })),
        { min: undefined, max: undefined, ...limits },
      ).outlook.kind;
    expect([rising(0.95 * reach, { max: 50 }), rising(1.05 * reach, { max: 50 })]).toEqual([
      'no trend',
      'reached',
    ]);
    expect([rising(0.95 * reach, { min: -50 }), rising(1.05 * reach, { min: -50 })]).toEqual([
      'no trend',
      'away',
    ]);
  });

  it('never names a date from two readings, whatever they are', () => {
    const reading = fc.record({
      x: fc.integer({ min: 0, max: 20_000 }),
      y: fc.integer({ min: 0, max: 1000 }),
      own: fc.constantFrom(0, 0.1, 10),
    });
    fc.assert(
      fc.property(reading, reading, fc.integer({ min: 0, max: 2000 }), (a, b, max) => {
        const { outlook, next, slopeHalfWidth } = fitTrend(
          [a, b].sort((p, q) => p.x - q.x),
          { min: undefined, max },
        );
        expect(outlook.kind).not.toBe('reached');
        expect([next, slopeHalfWidth]).toEqual([null, null]);
      }),
    );
  });
});

describe('an instrument whose own error is the same in every session', () => {
  const micrometer = (more = ''): string =>
    `  fine: { type: bore gauge, max_error: 0.010 mm, repeatability: 0.0005 mm${more} }\n`;
  const measured = (register: string, gauges = ['fine', 'fine', 'fine']): TrendLine => {
    const bores = ['70.000', '70.006', '70.012'];
    const sessions = bores.map((bore, index) =>
      service(
        2020 + index,
        index * 1000,
        '',
        `readings:\n  - { measure: cylinder_bore, with: ${gauges[index]}, at: { 1: ${bore} mm } }\n`,
      ),
    );
    const limits =
      'kind: limits\nsource: invented\nlimits: { cylinder_bore: { wear: { max: 70.030 mm } } }\n';
    const [line] = linesOf({
      ...shop(Object.assign({}, ...sessions)),
      'engine/limits.yaml': limits,
      'instruments.yaml': `kind: instruments\ninstruments:\n${register}`,
    });
    if (line === undefined) throw new Error('no line');
    return line;
  };
  const MM = 10_000_000;
  const other = micrometer().replace('fine', 'other');
  const twoSessions = measured(micrometer() + other, ['fine', 'fine', 'other']);

  it('moves the line, and not its slope', () => {
    const { fit } = measured(micrometer());
    // Student's t for one degree of freedom, 12.706; Sxx = 2 000 000 h².
    expect(((fit.slope ?? 0) * 1000) / MM).toBeCloseTo(0.006, 9);
    expect(((fit.slopeHalfWidth ?? 0) * 1000) / MM).toBeCloseTo((12.7062 * 0.0005) / Math.SQRT2, 6);
    expect(fit.outlook).toMatchObject({ kind: 'reached', x: expect.closeTo(5000, 6) });
  });

  it('widens the distance to the limit and the place of the line, and leaves that of a next reading', () => {
    const [fine, certain] = [micrometer(), micrometer().replace('max_error: 0.010 mm, ', '')].map(
      (register) => measured(register).fit,
    );
    const width = (interval: { lower: number; upper: number } | null | undefined): number =>
      (interval?.upper ?? Number.NaN) - (interval?.lower ?? Number.NaN);
    const [own, whole] = [width(certain?.last) / 2, width(fine?.last) / 2];
    expect(Math.sqrt(whole ** 2 - own ** 2) / MM).toBeCloseTo((1.959964 * 0.01) / Math.sqrt(3), 7);
    expect(width(fine?.next?.interval)).toBeCloseTo(width(certain?.next?.interval), 0);
    const reach = [certain, fine].map((fit) =>
      fit?.outlook.kind === 'reached' ? width(fit.outlook.interval) : Number.NaN,
    );
    expect(reach[1]).toBeGreaterThan((reach[0] ?? 0) + 1000);
  });

  it('is another one after a change of instrument', () => {
    expect(twoSessions.unlike).toEqual(['instrument']);
    expect(twoSessions.fit.outlook.kind).toBe('no trend');
  });

  it('is another one after a calibration', () => {
    const calibrated = measured(micrometer(', calibrated: 2021-08-01'));
    expect(calibrated.fit.slopeHalfWidth).toBeCloseTo(twoSessions.fit.slopeHalfWidth ?? 0, 6);
    expect(measured(micrometer(', calibrated: 2019-08-01')).fit.outlook.kind).toBe('reached');
  });

  it('is not shared where no document says that it was one instrument', () => {
    const nameless = [0, 1, 2].map((year) =>
      service(
        2020 + year,
        year * 1000,
        '',
        `readings:\n  - { measure: cylinder_bore, at: { 1: 70.00${6 * year} mm } }\n`,
      ),
    );
    expect(linesOf(inShop(...nameless))[0]?.fit.line?.shared).toEqual([]);
  });
});

describe('the readings that are followed', () => {
  it('are those of each session at a position, by hours where all state them', () => {
    const trend = trendIn(
      inShop(service(2020, 200, '4.1256'), service(2021, 2100, '4.1265'), service(2022, 4050, '4.1272')),
      'cylinder_bore',
    );
    expect(trend.axis).toBe('hours');
    expect(trend.lines.map(({ points }) => points.map(({ x, y }) => [x, y / INCH]))).toEqual([
      [
        [200, 4.1256],
        [2100, 4.1265],
        [4050, 4.1272],
      ],
    ]);
  });

  it('are taken by date where one states no hours, and that one is named', () => {
    const files = inShop(service(2020, 200, '4.1256'), service(2021, undefined, '4.1265'));
    const trend = trendIn(files, 'cylinder_bore');
    expect(trend.axis).toBe('date');
    expect(trend.withoutHours.map(({ name }) => name)).toEqual(['2021']);
    expect(trend.lines[0]?.points.map(({ x }) => dayText(x))).toEqual(['2020-03-01', '2021-03-01']);
    expect(trendIn(files, 'cylinder_bore', 'hours').lines[0]?.points).toHaveLength(1);
  });

  it('are the greatest where wear makes it larger, the least where it makes it smaller', () => {
    const bore = '{ front: 4.1256, rear: 4.1260 }';
    expect(linesOf(inShop(service(2020, 200, bore)))[0]).toMatchObject({ followed: 'greatest' });
    expect((linesOf(inShop(service(2020, 200, bore)))[0]?.points[0]?.y ?? 0) / INCH).toBeCloseTo(4.126, 10);
    const journals = trendIn(
      {
        ...shop({
          'engine/a.yaml': session('stage: service; date: 2020-03-01', [
            ['main_journal_diameter', 'mic', '{ 1: { front: 3.2478, rear: 3.2474 } }'],
          ]),
        }),
      },
      'main_journal_diameter',
    );
    expect(journals.lines).toMatchObject([{ followed: 'least' }]);
    expect((journals.lines[0]?.points[0]?.y ?? 0) / INCH).toBeCloseTo(3.2474, 10);
  });

  it('that are not like for like are said to be', () => {
    const other = 'readings:\n  - { measure: cylinder_bore, with: mic, at: { 1: 4.1265 } }\n';
    const files = inShop(
      service(2020, 200, '4.1256'),
      service(2021, 2100, '', other),
      service(2022, 4050, '4.1272'),
    );
    expect(linesOf(files)).toMatchObject([{ unlike: ['instrument'], points: [{}, {}, {}] }]);
    expect(linesOf(inShop(service(2020, 200, '4.1256'), service(2021, 2100, '4.1265')))[0]?.unlike).toEqual(
      [],
    );
  });
});

describe('a new line begins', () => {
  const starts = (more: string): readonly (string | undefined)[] =>
    linesOf(
      inShop(
        service(2020, 200, '4.1256'),
        service(2021, 2100, '4.1265'),
        service(2022, 4050, '4.1252', more),
        service(2023, 6000, '4.1258'),
      ),
    ).map(({ startedBy, points }) => `${points.length}${startedBy === undefined ? '' : ` ${startedBy}`}`);

  it.each([
    ['replaced: [{ part: liners }]', ['2', '2 liners replaced']],
    ['replaced: [{ part: liners and pistons, at: [1, 3] }]', ['2', '2 liners and pistons replaced']],
    ['machined: [{ part: Cylinder, at: 1 }]', ['2', '2 Cylinder machined']],
    ['fitted: { block: { mark: B7, condition: reground } }', ['2', '2 block B7 fitted']],
    ['fitted: { block: { mark: B7, condition: used } }', ['4']],
    ['replaced: [{ part: liners, at: 2 }]', ['4']],
    ['replaced: [{ part: main shells }]', ['4']],
    ['note: nothing done', ['4']],
  ])('with %s', (more, expected) => {
    expect(starts(`${more}\n`)).toEqual(expected);
  });

  it('by the label of a position as well', () => {
    const files = inShop(
      service(2020, 200, '4.1256'),
      service(2021, 2100, '4.1265', 'replaced: [{ part: liners, at: free end }]\n'),
    );
    const labelled = { ...files, 'engine/engine.yaml': `${ENGINE}labels: { cylinder: { 1: free end } }\n` };
    expect(linesOf(labelled).map(({ startedBy }) => startedBy)).toEqual([undefined, 'liners replaced']);
  });

  it('with work on the part, and the readings before it in the same session step back', () => {
    const honed =
      'readings:\n  - { measure: cylinder_bore, with: bore, at: { 1: 4.1270 } }\n  - { work: honed, on: cylinder 1 }\n  - { measure: cylinder_bore, with: bore, at: { 1: 4.1290 } }\n';
    const lines = linesOf(inShop(service(2020, 200, '4.1256'), service(2021, 2100, '', honed)));
    expect(lines).toMatchObject([{ startedBy: undefined }, { startedBy: 'cylinder 1 honed' }]);
    expect((lines[1]?.points[0]?.y ?? 0) / INCH).toBeCloseTo(4.129, 10);
  });

  it('in a session that measures nothing of it', () => {
    const lines = linesOf(
      inShop(
        service(2020, 200, '4.1256'),
        service(2021, 2100, '', 'replaced: [{ part: liners }]\nreadings: []\n'),
        service(2022, 4050, '4.1252'),
      ),
    );
    expect(lines.map(({ points }) => points.length)).toEqual([1, 1]);
  });

  it('where the mark of a fitted part is another one, and not where it is the same', () => {
    const block = (mark: string): string => `fitted: { block: { mark: ${mark}, condition: used } }\n`;
    const files = (last: string): Files =>
      inShop(service(2020, 200, '4.1256', block('B7')), service(2021, 2100, '4.1265', block(last)));
    expect(linesOf(files('B7'))).toHaveLength(1);
    expect(linesOf(files('B8'))).toHaveLength(2);
  });

  it('where a place on a fitted part is of another size, and not where it is of the same', () => {
    const block = (size: string): string => `fitted: { block: { cylinder: ${size}, condition: used } }\n`;
    const files = (last: string): Files =>
      inShop(service(2020, 200, '4.1256', block('std')), service(2021, 2100, '4.1265', block(last)));
    expect(linesOf(files('std'))).toHaveLength(1);
    expect(linesOf(files('0.020 over'))).toHaveLength(2);
  });

  it('for a clearance where one of the parts that it lies between was changed', () => {
    const clearance = (year: number, more: string): Files => ({
      [`engine/${year}.yaml`]: `kind: session\nstage: service\ndate: ${year}-03-01\n${more}readings:\n  - { measure: main_bearing_clearance, with: bore, at: { 1: 0.0030 } }\n`,
    });
    for (const part of [
      'crankshaft',
      'main shells',
      'main bearing shells',
      'bearings',
      'main caps',
      'block',
    ]) {
      const files = inShop(clearance(2020, ''), clearance(2021, `machined: [{ part: ${part} }]\n`));
      expect(trendIn(files, 'main_bearing_clearance').lines, part).toHaveLength(2);
    }
    for (const part of ['pistons', 'rod shells', 'rings', 'connecting rods']) {
      const files = inShop(clearance(2020, ''), clearance(2021, `replaced: [{ part: ${part} }]\n`));
      expect(trendIn(files, 'main_bearing_clearance').lines, part).toHaveLength(1);
    }
  });

  it('for the rods of a vee where the pin that they share was ground, however that is said', () => {
    const vee =
      'kind: engine\nname: Vee\nunits: { length: in }\nlayout: { crankpins: { 1: [1L, 1R], 2: [2L, 2R] }, mains: 3 }\n';
    const clearances = (year: number, more: string): Files => ({
      [`engine/${year}.yaml`]: `kind: session\nstage: service\ndate: ${year}-03-01\n${more}readings:\n  - { measure: rod_bearing_clearance, with: bore, at: { 1L: 0.0030, 1R: 0.0030, 2L: 0.0030 } }\n`,
    });
    for (const ground of [
      'machined: [{ part: crankpins, at: [1] }]',
      'machined: [{ part: crankpin 1 }]',
      'machined: [{ part: rod journals, at: 1 }]',
    ]) {
      const files = {
        ...inShop(clearances(2020, ''), clearances(2021, `${ground}\n`)),
        'engine/engine.yaml': vee,
      };
      const lines = trendIn(files, 'rod_bearing_clearance').lines;
      expect(
        lines.map(({ row }) => row.position.name),
        ground,
      ).toEqual(['1L', '1L', '1R', '1R', '2L']);
    }
  });
});
