import { describe, expect, test } from 'vitest';
import { strengthOf } from '../../../src/torque/fasteners/grades.ts';
import { parseThread } from '../../../src/torque/fasteners/threads.ts';
import { strength, thread } from '../known.ts';

/** ASME B1.1 (small sizes and those above 1 in from memory): size, inches, threads per inch of UNC and UNF. */
test.each([
  ['4', 0.112, 40, 48],
  ['5', 0.125, 40, 44],
  ['6', 0.138, 32, 40],
  ['8', 0.164, 32, 36],
  ['10', 0.19, 24, 32],
  ['12', 0.216, 24, 28],
  ['1/4', 0.25, 20, 28],
  ['5/16', 0.3125, 18, 24],
  ['3/8', 0.375, 16, 24],
  ['7/16', 0.4375, 14, 20],
  ['1/2', 0.5, 13, 20],
  ['9/16', 0.5625, 12, 18],
  ['5/8', 0.625, 11, 18],
  ['3/4', 0.75, 10, 16],
  ['7/8', 0.875, 9, 14],
  ['1', 1, 8, 12],
  ['1-1/8', 1.125, 7, 12],
  ['1-1/4', 1.25, 7, 12],
  ['1-3/8', 1.375, 6, 12],
  ['1-1/2', 1.5, 6, 12],
] as const)('%s is %d in with %d coarse and %d fine threads per inch', (size, inches, coarse, fine) => {
  for (const [count, series, named] of [
    [coarse, 'coarse', 'UNC'],
    [fine, 'fine', 'UNF'],
  ] as const) {
    const found = thread(`${size}-${count}`);
    expect(found).toMatchObject({ system: 'unified', series, designation: `${size}-${count} ${named}` });
    expect(found.diameterM / 0.0254).toBeCloseTo(inches, 12);
    expect(found.pitchM / 0.0254).toBeCloseTo(1 / count, 12);
  }
});

/** ISO 261 (fine pitches from memory): diameter, coarse pitch, fine pitches, in mm. */
test.each([
  [3, 0.5, [0.35]],
  [3.5, 0.6, [0.35]],
  [4, 0.7, [0.5]],
  [5, 0.8, [0.5]],
  [6, 1, [0.75]],
  [7, 1, [0.75]],
  [8, 1.25, [1, 0.75]],
  [9, 1.25, [1, 0.75]],
  [10, 1.5, [1.25, 1, 0.75]],
  [11, 1.5, [1, 0.75]],
  [12, 1.75, [1.5, 1.25, 1]],
  [14, 2, [1.5, 1.25, 1]],
  [16, 2, [1.5, 1]],
  [18, 2.5, [2, 1.5, 1]],
  [20, 2.5, [2, 1.5, 1]],
  [22, 2.5, [2, 1.5, 1]],
  [24, 3, [2, 1.5, 1]],
  [27, 3, [2, 1.5, 1]],
  [30, 3.5, [3, 2, 1.5, 1]],
  [33, 3.5, [3, 2, 1.5]],
  [36, 4, [3, 2, 1.5]],
  [39, 4, [3, 2, 1.5]],
])('M%d has a coarse pitch of %d mm and fine ones of %j', (size, coarse, fine) => {
  expect(thread(`M${size}`)).toMatchObject({ series: 'coarse', designation: `M${size} x ${coarse}` });
  for (const pitch of [coarse, ...fine]) {
    const found = thread(`M${size}x${pitch}`);
    const series = pitch === coarse ? 'coarse' : 'fine';
    expect(found).toMatchObject({ system: 'metric', series, designation: `M${size} x ${pitch}` });
    expect(found.diameterM * 1000).toBeCloseTo(size, 12);
    expect(found.pitchM * 1000).toBeCloseTo(pitch, 12);
  }
  expect(parseThread(`M${size}x${coarse + 1}`)).toEqual({
    problem: `M${size} has no pitch of ${coarse + 1} mm`,
    help: `pitches of M${size}: ${[coarse, ...fine].join(', ')} mm`,
  });
});

describe('at the edges', () => {
  test.each([
    ['M3x0.2', 'M3 x 0.2', 'special'],
    ['M10*1.25', 'M10 x 1.25', 'fine'],
    ['M10x1.25 - 6G6H', 'M10 x 1.25', 'fine'],
    ['m3.5X0,6', 'M3.5 x 0.6', 'coarse'],
    ['1/2-80', '1/2-80 UNS', 'special'],
    ['1/2-14', '1/2-14 UNS', 'special'],
    ['1/2-14 UN', '1/2-14 UNS', 'special'],
    ['1/2-13 UN', '1/2-13 UNC', 'coarse'],
    ['1/2-13 UNS', '1/2-13 UNC', 'coarse'],
    ['1/2-20 NF', '1/2-20 UNF', 'fine'],
    ['1/2-20 unrf', '1/2-20 UNF', 'fine'],
    ['1/2-13-UNC-2B', '1/2-13 UNC', 'coarse'],
    ['no 10-32', '10-32 UNF', 'fine'],
    ['No.10-32', '10-32 UNF', 'fine'],
    ['1/2 in - 13', '1/2-13 UNC', 'coarse'],
    ['.437-14', '7/16-14 UNC', 'coarse'],
    ['.438-14', '7/16-14 UNC', 'coarse'],
    ['1.125-7', '1-1/8-7 UNC', 'coarse'],
  ])('%s is %s, %s', (written, designation, series) => {
    expect(thread(written)).toMatchObject({ designation, series });
  });

  const TWO_PITCHES = 'write 1/2-13 (UNC) or 1/2-20 (UNF)';
  test.each([
    ['M3x0.19', 'M3 has no pitch of 0.19 mm', 'pitches of M3: 0.5, 0.35 mm'],
    ['1/2-81', '1/2-81 is not a thread', TWO_PITCHES],
    ['1/2-16 UNC', '1/2-16 UNC is not a thread', TWO_PITCHES],
    ['1/2-16 unf', '1/2-16 UNF is not a thread', TWO_PITCHES],
    ['1/2-20 NC', '1/2-20 NC is not a thread', TWO_PITCHES],
    ['#10', '#10 does not say how many threads per inch', 'write 10-24 (UNC) or 10-32 (UNF)'],
    ['.5', '.5 does not say how many threads per inch', TWO_PITCHES],
    ['1 1/8', '1 1/8 does not say how many threads per inch', 'write 1-1/8-7 (UNC) or 1-1/8-12 (UNF)'],
    ['.439-14', '.439 is not a size of ASME B1.1', 'sizes from no. 4 to 1-1/2 in are known'],
    ['3-48', '3 is not a size of ASME B1.1', 'sizes from no. 4 to 1-1/2 in are known'],
    ['11/16', '`11/16` is not a thread', 'write it as M10 x 1.25, M12, 9/16-12 or 10-32'],
    [' 14 ', '` 14 ` is not a thread', 'write it as M10 x 1.25, M12, 9/16-12 or 10-32'],
  ])('%s is refused: %s', (written, problem, help) => {
    expect(parseThread(written)).toEqual({ problem, help });
  });
});

describe('a grade', () => {
  const PSI = 6_894.757293168;
  const inches = (diameterIn: number) => ({ ...thread('1/2-13'), diameterM: diameterIn * 0.0254 });
  const metres = (diameterMm: number) => ({ ...thread('M12'), diameterM: diameterMm / 1000 });

  test('says what it stands and where that comes from', () => {
    const { proofPa, yieldPa, ...words } = strength('5', '1/2-13');
    expect(words).toEqual({
      grade: 'SAE J429 grade 5',
      source: "SAE J429 (fastener makers' tables; yield from memory)",
    });
    expect([proofPa / PSI, yieldPa / PSI].map(Math.round)).toEqual([85_000, 92_000]);
    expect(strength('8', '1/2-13').source).toBe(
      "SAE J429 (fastener makers' tables; proof and yield from memory)",
    );
    expect(strength('12.9', 'M12')).toEqual({
      grade: 'ISO 898-1 class 12.9',
      proofPa: 970e6,
      yieldPa: 1100e6,
      source: "ISO 898-1 (fastener makers' tables)",
    });
  });

  test.each(['2', '5', '8'])('%s of SAE J429 is stated above no. 12 and up to 1-1/2 in', (grade) => {
    expect(strengthOf(grade, inches(0.216))).toHaveProperty('problem');
    expect(strengthOf(grade, inches(0.217))).toHaveProperty('strength');
    expect(strengthOf(grade, inches(1.5))).toHaveProperty('strength');
    expect(strengthOf(grade, inches(1.501))).toEqual({
      problem: `SAE J429 grade ${grade} states nothing for 1/2-13 UNC`,
      help: 'state the proof strength that the fastener maker gives',
    });
  });

  test.each(['8.8', '10.9', '12.9'])('%s of ISO 898-1 is stated up to M39', (grade) => {
    expect(strengthOf(grade, metres(0.5))).toHaveProperty('strength');
    expect(strengthOf(grade, metres(39))).toHaveProperty('strength');
    expect(strengthOf(grade, metres(39.001))).toHaveProperty('problem');
  });

  test.each([
    ['8', 'M12', '8.8, 10.9, 12.9'],
    ['8.8', '1/2-13', '2, 5, 8'],
    ['grade x', '1/2-13', '2, 5, 8'],
    ['my grade 8', '1/2-13', '2, 5, 8'],
    ['grade 8 plus', '1/2-13', '2, 5, 8'],
  ])('%s is not known on %s', (grade, size, marks) => {
    const { system, designation } = thread(size);
    expect(strengthOf(grade, thread(size))).toEqual({
      problem: `${grade} is not a known grade for ${designation}`,
      help: `known for ${system} threads: ${marks}; or state the proof strength that the fastener maker gives`,
    });
  });
});
