import { describe, expect, test } from 'vitest';
import { averageAndRange } from '../../src/measurement/averageAndRange.ts';
import { gaugeAnova } from '../../src/measurement/gaugeAnova.ts';
import type { GaugeReadings, NoStudy } from '../../src/measurement/gaugeReadings.ts';
import { percentOfTolerance } from '../../src/measurement/gaugeStudy.ts';
import { readRows } from './csv.ts';

/** The study of ten parts, three people and three repeats in AIAG, Measurement Systems Analysis, 4th edition. */
function tenByThreeByThree(): GaugeReadings {
  const rows = readRows('aiag-msa-10x3x3');
  return Array.from({ length: 10 }, (_, part) =>
    ['A', 'B', 'C'].map((person) =>
      rows
        .filter((row) => row.part === String(part + 1) && row.appraiser === person)
        .map((row) => Number(row.value)),
    ),
  );
}

function mustWork<Study extends { readonly kind: string }>(study: Study | NoStudy): Study {
  if (study.kind === 'no study') throw new Error((study as NoStudy).reason);
  return study as Study;
}

const READINGS = tenByThreeByThree();

describe('ten parts, three people, three repeats by average and range', () => {
  const study = mustWork(averageAndRange(READINGS));

  // Published, worked there with rounded intermediate figures; GRR and PV from memory.
  test.each([
    ['EV', study.repeatability.deviation, 0.20188],
    ['AV', study.reproducibility.deviation, 0.22963],
    ['GRR', study.gauge.deviation, 0.30575],
    ['PV', study.parts.deviation, 1.10456],
    ['TV', study.total.deviation, 1.1461],
    ['% EV', study.repeatability.percentOfTotal, 17.62],
    ['% AV', study.reproducibility.percentOfTotal, 20.04],
    ['% GRR', study.gauge.percentOfTotal, 26.68],
    ['% PV', study.parts.percentOfTotal, 96.38],
  ])('%s as published', (_, got, published) => {
    expect(Math.abs(got / published - 1)).toBeLessThan(1e-3);
  });

  test.each([
    ['mean range', study.meanRange, 0.341667],
    ["range of the people's means", study.peopleRange, 0.444667],
    ["range of the parts' means", study.partRange, 3.511111],
    ['EV', study.repeatability.deviation, 0.201857],
    ['AV', study.reproducibility.deviation, 0.229667],
    ['GRR', study.gauge.deviation, 0.305766],
    ['PV', study.parts.deviation, 1.104596],
    ['TV', study.total.deviation, 1.146135],
  ])('%s worked separately from the readings', (_, got, worked) => {
    expect(got).toBeCloseTo(worked, 6);
  });

  test('it tells five categories of parts apart', () => {
    expect(study.distinctCategories).toBeCloseTo(5.094, 3);
    expect(study.wholeCategories).toBe(5);
  });
});

describe('ten parts, three people, three repeats by analysis of variance', () => {
  const study = mustWork(gaugeAnova(READINGS));
  const { table } = study;

  test.each([
    ['people', table.people, 3.1673, 3.167262222, 2],
    ['parts', table.parts, 88.3619, 88.361934444, 9],
    ['interaction', table.interaction, 0.359, 0.358982222, 18],
    ['repeatability', table.repeatability, 2.7589, 2.758933333, 60],
    ['total', table.total, 94.6471, 94.647112222, 89],
  ])('the sum of squares of %s, published and worked separately', (_, row, published, worked, dof) => {
    expect(row.sumOfSquares).toBeCloseTo(published, 4);
    expect(row.sumOfSquares).toBeCloseTo(worked, 9);
    expect(row.dof).toBe(dof);
  });

  test('the interaction is not significant, so that it is pooled', () => {
    expect(table.interaction.f?.toFixed(3)).toBe('0.434');
    expect(table.interaction.f).toBeCloseTo(0.433721, 6);
    expect(table.interaction.p).toBeCloseTo(0.97411, 5);
    expect(table.pooled?.meanSquare).toBeCloseTo(0.039973276, 9);
    expect(table.pooled?.dof).toBe(78);
    expect(table.people.f).toBeCloseTo(1.583631111 / 0.039973276, 5);
  });

  // The ratios of the published table (from memory) are those to the repeatability that was not pooled.
  test('the mean squares and their ratios to the repeatability', () => {
    expect(table.people.meanSquare).toBeCloseTo(1.58363, 5);
    expect(table.parts.meanSquare).toBeCloseTo(9.81799, 5);
    expect(table.people.meanSquare / table.repeatability.meanSquare).toBeCloseTo(34.44007, 5);
    expect(table.parts.meanSquare / table.repeatability.meanSquare).toBeCloseTo(213.51714, 5);
  });

  test.each([
    ['EV', study.repeatability, 0.199933, 0.19993318, 18.4, 3.4],
    ['AV', study.reproducibility, 0.226838, 0.226837521, 20.9, 4.4],
    ['GRR', study.gauge, 0.302373, 0.302371522, 27.9, 7.8],
    ['PV', study.parts, 1.042327, 1.042327494, 96, 92.2],
    ['TV', study.total, 1.085, 1.085299563, 100, 100],
  ])('%s, published and worked separately', (_, share, published, worked, percent, contribution) => {
    expect(Math.abs(share.deviation / published - 1)).toBeLessThan(3e-4);
    expect(share.deviation).toBeCloseTo(worked, 9);
    expect(share.percentOfTotal).toBeCloseTo(percent, 1);
    expect(share.contribution).toBeCloseTo(contribution, 1);
  });

  test('4.86 categories are cut down to four', () => {
    expect(study.distinctCategories).toBeCloseTo(4.8605, 4);
    expect(study.wholeCategories).toBe(4);
    expect(study.interaction.deviation).toBe(0);
  });

  test('an interaction just at the significance is pooled, and kept below it', () => {
    const { p } = study.table.interaction;
    if (p === null) throw new Error('no p');
    expect(mustWork(gaugeAnova(READINGS, p)).table.pooled).not.toBeNull();
    expect(mustWork(gaugeAnova(READINGS, p * 1.0001)).table.pooled).toBeNull();
  });

  test('with the interaction kept (worked separately)', () => {
    const kept = mustWork(gaugeAnova(READINGS, 2));
    expect(kept.table.pooled).toBeNull();
    expect(kept.table.people.f).toBeCloseTo(79.40605, 5);
    expect(kept.table.parts.f).toBeCloseTo(492.29142, 5);
    expect(kept.repeatability.deviation).toBeCloseTo(0.214434657, 9);
    expect(kept.reproducibility.deviation).toBeCloseTo(0.22830445, 9);
    expect(kept.gauge.deviation).toBeCloseTo(0.313217407, 9);
    expect(kept.parts.deviation).toBeCloseTo(1.043394527, 9);
    expect(kept.total.deviation).toBeCloseTo(1.089393081, 9);
  });
});

test('people who differ on some parts only are an interaction, which is kept', () => {
  // Cells ±1 about their part and person, repeats ±0.1: SS of the interaction 8, of the repeats 0.08, four cells of two.
  const study = mustWork(
    gaugeAnova([
      [
        [10.9, 11.1],
        [8.9, 9.1],
      ],
      [
        [18.9, 19.1],
        [20.9, 21.1],
      ],
    ]),
  );
  expect(study.table.interaction.sumOfSquares).toBeCloseTo(8, 10);
  expect(study.table.repeatability.sumOfSquares).toBeCloseTo(0.08, 10);
  expect(study.table.pooled).toBeNull();
  expect(study.table.interaction.p).toBeLessThan(0.001);
  expect(study.interaction.deviation).toBeCloseTo(Math.sqrt((8 - 0.02) / 2), 10);
  expect(study.reproducibility.deviation).toBe(0);
});

test('a gauge that repeats without any difference has unlimited categories', () => {
  const exact = [
    [
      [1, 1],
      [1, 1],
    ],
    [
      [2, 2],
      [2, 2],
    ],
  ];
  expect(mustWork(gaugeAnova(exact)).distinctCategories).toBe(Number.POSITIVE_INFINITY);
  expect(mustWork(averageAndRange(exact)).gauge.deviation).toBe(0);
});

test('parts that do not differ leave one category', () => {
  const alike = [
    [
      [1, 2],
      [2, 1],
    ],
    [
      [2, 1],
      [1, 2],
    ],
  ];
  expect(mustWork(gaugeAnova(alike))).toMatchObject({ distinctCategories: 0, wholeCategories: 1 });
});

test('six deviations against a tolerance', () => {
  const { gauge } = mustWork(averageAndRange(READINGS));
  expect(percentOfTolerance(gauge, 4)).toBeCloseTo((100 * 6 * 0.305766) / 4, 3);
});

describe('a study that cannot be worked says why', () => {
  const pair = [1, 2];
  test.each([
    ['a study needs two or more parts', [[pair, pair]]],
    ['a study needs two or more people: one alone shows no reproducibility', [[pair], [pair]]],
    [
      'a study needs two or more repeats: one reading shows no repeatability',
      [
        [[1], [2]],
        [[3], [4]],
      ],
    ],
    [
      'every person must measure every part the same number of times',
      [
        [pair, pair],
        [pair, [1]],
      ],
    ],
    ['every person must measure every part the same number of times', [[pair, pair], [pair]]],
    [
      'all readings are the same: the gauge is too coarse to tell these parts apart',
      [
        [
          [1, 1],
          [1, 1],
        ],
        [
          [1, 1],
          [1, 1],
        ],
      ],
    ],
    ['a study needs two or more parts', []],
  ])('%s', (reason, readings) => {
    for (const study of [averageAndRange(readings), gaugeAnova(readings)]) {
      expect(study).toEqual({ kind: 'no study', reason });
    }
  });

  const sized = (parts: number, people: number, repeats: number): GaugeReadings =>
    Array.from({ length: parts }, (_, i) =>
      Array.from({ length: people }, (_, j) =>
        Array.from({ length: repeats }, (_, k) => i + 0.1 * j + 0.01 * k),
      ),
    );

  test.each([
    [11, 3, 3],
    [5, 4, 2],
    [5, 2, 4],
  ])('%d parts, %d people and %d repeats have no factors, but an analysis of variance', (...size) => {
    const [parts, people, repeats] = size;
    const study = averageAndRange(sized(...size));
    expect(study).toEqual({
      kind: 'no study',
      reason:
        'average and range has factors for 2 or 3 repeats, 2 or 3 people and 2 to 10 parts, ' +
        `not for ${repeats} repeats, ${people} people and ${parts} parts; analysis of variance takes any size`,
    });
    expect(gaugeAnova(sized(...size)).kind).toBe('analysis of variance');
  });

  // One range of n normal values has the mean d2 and the deviation d3 (tables of control charts, from memory);
  // the factor for a single range is 1/√(d2² + d3²).
  test.each([
    [2, 1.128, 0.853],
    [3, 1.693, 0.888],
    [4, 2.059, 0.88],
    [5, 2.326, 0.864],
    [6, 2.534, 0.848],
    [7, 2.704, 0.833],
    [8, 2.847, 0.82],
    [9, 2.97, 0.808],
    [10, 3.078, 0.797],
  ])('the factor for %d parts is that of one range of so many', (parts, d2, d3) => {
    const study = mustWork(averageAndRange(sized(parts, 3, 3)));
    expect(study.parts.deviation / study.partRange).toBeCloseTo(1 / Math.hypot(d2, d3), 3);
  });

  test('every size with factors is worked', () => {
    for (let parts = 2; parts <= 10; parts++) {
      for (const people of [2, 3]) {
        for (const repeats of [2, 3]) {
          expect(averageAndRange(sized(parts, people, repeats)).kind).toBe('average and range');
        }
      }
    }
  });
});

describe('five parts, two people and four repeats: no two counts alike', () => {
  /** Parts, people and both together, with a scatter of its own in each reading: made up, and never the same twice. */
  const uneven: GaugeReadings = [10, 12, 13.5, 15, 18].map((part, i) =>
    [0, 0.8].map((person, j) =>
      [0.1, -0.2, 0.3, 0.05].map(
        (scatter, k) => part + person + 0.4 * ((i * 3 + j * 2) % 5) + scatter * (1 + ((i + j + k) % 3)),
      ),
    ),
  );

  /** By projections: what each set of columns explains beyond the one before (any textbook of linear models). */
  function explained(): Readonly<Record<string, number>> {
    const singles = uneven.flatMap((part, i) => part.flatMap((cell, j) => cell.map((y) => ({ i, j, y }))));
    const ys = singles.map(({ y }) => y);
    const sumFor = (groupOf: (single: { i: number; j: number }) => string): number => {
      const names = [...new Set(singles.map(groupOf))];
      return names.reduce((total, name) => {
        const group = singles.filter((single) => groupOf(single) === name);
        return total + group.reduce((sum, { y }) => sum + y, 0) ** 2 / group.length;
      }, 0);
    };
    const nothing = sumFor(() => '');
    const [parts, people, cells] = [
      sumFor(({ i }) => `${i}`),
      sumFor(({ j }) => `${j}`),
      sumFor(({ i, j }) => `${i} ${j}`),
    ];
    const all = ys.reduce((sum, y) => sum + y * y, 0);
    return {
      parts: parts - nothing,
      people: people - nothing,
      interaction: cells - parts - people + nothing,
      repeatability: all - cells,
    };
  }

  const sums = explained();
  // 4, 1, 4 and 30 degrees of freedom.
  const squares = {
    parts: (sums.parts ?? 0) / 4,
    people: (sums.people ?? 0) / 1,
    interaction: (sums.interaction ?? 0) / 4,
    repeatability: (sums.repeatability ?? 0) / 30,
  };

  test('the analysis of variance takes each by its own count', () => {
    const { table, ...study } = mustWork(gaugeAnova(uneven, 2));
    expect([table.parts.dof, table.people.dof, table.interaction.dof, table.repeatability.dof]).toEqual([
      4, 1, 4, 30,
    ]);
    expect(table.parts.sumOfSquares).toBeCloseTo(sums.parts ?? 0, 9);
    expect(table.people.sumOfSquares).toBeCloseTo(sums.people ?? 0, 9);
    expect(table.interaction.sumOfSquares).toBeCloseTo(sums.interaction ?? 0, 9);
    expect(table.repeatability.sumOfSquares).toBeCloseTo(sums.repeatability ?? 0, 9);
    expect(study.repeatability.deviation ** 2).toBeCloseTo(squares.repeatability, 9);
    const interaction = (squares.interaction - squares.repeatability) / 4;
    const people = (squares.people - squares.interaction) / (5 * 4);
    const parts = (squares.parts - squares.interaction) / (2 * 4);
    expect(Math.min(interaction, people, parts)).toBeGreaterThan(0);
    expect(study.gauge.deviation ** 2).toBeCloseTo(squares.repeatability + interaction + people, 9);
    expect(study.parts.deviation ** 2).toBeCloseTo(parts, 9);
  });

  // K1 for so many repeats (AIAG, as quoted).
  test.each([
    [2, 0.8862],
    [3, 0.5908],
  ])('average and range has its own factors for %i repeats and two people', (repeats, forRepeats) => {
    const two = uneven.map((part) => part.map((cell) => cell.slice(0, repeats)));
    const study = mustWork(averageAndRange(two));
    const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
    const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
    // K2 for two people 0.7071, K3 for five parts 0.4030.
    const repeatability = forRepeats * mean(two.flatMap((part) => part.map(range)));
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the factor as tabulated
    const people = 0.7071 * range([0, 1].map((j) => mean(two.flatMap((part) => part[j] ?? []))));
    expect(study.repeatability.deviation).toBeCloseTo(repeatability, 9);
    expect(study.reproducibility.deviation).toBeCloseTo(
      Math.sqrt(people ** 2 - repeatability ** 2 / (5 * repeats)),
      9,
    );
    expect(study.parts.deviation).toBeCloseTo(0.403 * range(two.map((part) => mean(part.flat()))), 9);
  });
});
