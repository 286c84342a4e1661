import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { METRIC_SIZES } from '../../../src/torque/fasteners/metricThreads.ts';
import { parseThread } from '../../../src/torque/fasteners/threads.ts';
import { thread } from '../known.ts';

// The pitches that ISO 261 takes up, from memory.
const PITCHES = [0.35, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4];

test.each(METRIC_SIZES.map((size) => [size.diameterMm, size] as const))(
  'M%d has pitches of the standard, the coarse one and finer ones',
  (_, { coarseMm, fineMm }) => {
    const all = [coarseMm, ...fineMm];
    expect(PITCHES).toEqual(expect.arrayContaining(all));
    expect(all).toEqual([...new Set(all)].sort((a, b) => b - a));
  },
);

const MM2 = 1e6;
const IN2 = 1 / 0.0254 ** 2;

describe('the stress area of metric coarse threads, as second-hand copies of ISO 898-1 print it in mm2', () => {
  test.each([
    ['M3', '5.03'],
    ['M4', '8.78'],
    ['M5', '14.2'],
    ['M6', '20.1'],
    ['M7', '28.9'],
    ['M8', '36.6'],
    ['M10', '58.0'],
    ['M12', '84.3'],
    ['M14', '115'],
    ['M16', '157'],
    ['M18', '192'],
    ['M20', '245'],
    ['M22', '303'],
    ['M24', '353'],
    ['M27', '459'],
    ['M30', '561'],
    ['M33', '694'],
    ['M36', '817'],
    ['M39', '976'],
  ])('%s has %s mm2', (written, printed) => {
    expect((thread(written).stressAreaM2 * MM2).toPrecision(3)).toBe(printed);
  });
});

test.each([
  ['M16x2', 156.7],
  ['M16x1.5', 167.2],
])('%s has %d mm2 (Jindal, Machine Design, chapter 9)', (written, mm2) => {
  expect(thread(written).stressAreaM2 * MM2).toBeCloseTo(mm2, 1);
});

describe('the stress area of unified threads, as fastener tables print it in square inches', () => {
  test.each([
    ['8-32', '.0140'],
    ['10-24', '.0175'],
    ['1/4-20', '.0318'],
    ['1/4-28', '.0364'],
    ['5/16-18', '.0524'],
    ['3/8-16', '.0775'],
    ['3/8-24', '.0878'],
    ['7/16-14', '.1063'],
    ['7/16-20', '.1187'],
    ['1/2-13', '.1419'],
    ['5/8-11', '.226'],
    ['3/4-10', '.334'],
    ['7/8-9', '.462'],
    ['1-8', '.606'],
  ])('%s has %s in2', (written, printed) => {
    const places = printed.length - 1;
    expect((thread(written).stressAreaM2 * IN2).toFixed(places)).toBe(`0${printed}`);
  });

  test('5/16-24 comes out as .0581, where the tables print .0580', () => {
    const area = thread('5/16-24').stressAreaM2 * IN2;
    expect(area.toFixed(4)).toBe('0.0581');
    expect(Math.abs(area - 0.058)).toBeLessThan(0.0001);
  });
});

describe('basic diameters', () => {
  test.each([
    ['M10', 9.026, 8.16],
    ['M12', 10.863, 9.853],
    ['M8x1', 7.35, 6.773],
  ])('%s has a pitch diameter of %d mm and a root of %d mm (ISO 724, from memory)', (written, d2, d3) => {
    expect(thread(written).pitchDiameterM * 1000).toBeCloseTo(d2, 3);
    expect(thread(written).minorDiameterM * 1000).toBeCloseTo(d3, 3);
  });

  test('1/2-13 has a pitch diameter of .4500 in (ASME B1.1, from memory)', () => {
    expect(thread('1/2-13').pitchDiameterM / 0.0254).toBeCloseTo(0.45, 4);
  });
});

describe('a thread is read as people write it', () => {
  test.each([
    ['M12', 'M12 x 1.75', 'coarse'],
    ['m12', 'M12 x 1.75', 'coarse'],
    ['M 10 x 1,25', 'M10 x 1.25', 'fine'],
    ['M10×1.25-6g', 'M10 x 1.25', 'fine'],
    ['M11x1.25', 'M11 x 1.25', 'special'],
    ['9/16-12', '9/16-12 UNC', 'coarse'],
    ['3/4-10 UNC', '3/4-10 UNC', 'coarse'],
    ['3/4-10 UNC-2A', '3/4-10 UNC', 'coarse'],
    ['3/4 - 16 NF', '3/4-16 UNF', 'fine'],
    ['10-32', '10-32 UNF', 'fine'],
    ['#10-32', '10-32 UNF', 'fine'],
    ['No. 10-24', '10-24 UNC', 'coarse'],
    ['.5625-12', '9/16-12 UNC', 'coarse'],
    ['0.438-20', '7/16-20 UNF', 'fine'],
    ['1/2"-13', '1/2-13 UNC', 'coarse'],
    ['7/16-20 UNJF-3A', '7/16-20 UNF', 'fine'],
    ['1-8', '1-8 UNC', 'coarse'],
    ['1-14', '1-14 UNS', 'special'],
    ['9/16-24 UNEF', '9/16-24 UNEF', 'special'],
    ['1-1/8-7', '1-1/8-7 UNC', 'coarse'],
    ['1 1/8-12 UNF', '1-1/8-12 UNF', 'fine'],
    ['  1-1/2-6  ', '1-1/2-6 UNC', 'coarse'],
  ])('%s is %s', (written, designation, series) => {
    expect(thread(written)).toMatchObject({ designation, series });
  });

  test.each([
    ['1/2', '1/2 does not say how many threads per inch', 'write 1/2-13 (UNC) or 1/2-20 (UNF)'],
    ['1/2-13 UNF', '1/2-13 UNF is not a thread', 'write 1/2-13 (UNC) or 1/2-20 (UNF)'],
    ['1/2-12', '1/2-12 is not a thread', 'write 1/2-13 (UNC) or 1/2-20 (UNF)'],
    ['13/16-16', '13/16 is not a size of ASME B1.1', 'sizes from no. 4 to 1-1/2 in are known'],
    ['1/0-13', '1/0 is not a size of ASME B1.1', 'sizes from no. 4 to 1-1/2 in are known'],
    ['M13', 'M13 is not a size of ISO 261', 'sizes from M3 to M39 are known'],
    ['M10x12.5', 'M10 has no pitch of 12.5 mm', 'pitches of M10: 1.5, 1.25, 1, 0.75 mm'],
    ['M10x0', 'M10 has no pitch of 0 mm', 'pitches of M10: 1.5, 1.25, 1, 0.75 mm'],
    ['half inch', '`half inch` is not a thread', 'write it as M10 x 1.25, M12, 9/16-12 or 10-32'],
    ['', '`` is not a thread', 'write it as M10 x 1.25, M12, 9/16-12 or 10-32'],
  ])('%s is refused with what to write instead', (written, problem, help) => {
    expect(parseThread(written)).toEqual({ problem, help });
  });

  test('what is printed reads back as the same thread, and no text makes the reader throw', () => {
    for (const written of ['M12', 'M8x1', '10-32', '1-1/4-12', '1-14']) {
      expect(thread(thread(written).designation)).toEqual(thread(written));
    }
    fc.assert(fc.property(fc.string(), (text) => void parseThread(text)));
  });
});
