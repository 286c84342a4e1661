import { describe, expect, it } from 'vitest';
import type { BandPicture } from '../../../src/output/page/pictures/band.ts';
import { shadeOf } from '../../../src/output/page/pictures/boreMap.ts';
import { exaggerationText } from '../../../src/output/page/pictures/journal.ts';
import type { Picture } from '../../../src/output/page/pictures/pictures.ts';
import { marksOf, placesOf, pointsOf } from './drawn.ts';

const TOLD = { title: 'main bearing clearance 3', description: 'loose by <2> tenths & worn' };

/** A main bearing: new 20 to 38 tenths, target 26 to 33, wear limit 50; read 34, it was 41. */
const BAND: BandPicture = {
  ...TOLD,
  kind: 'band',
  reading: { least: 34, greatest: 36 },
  before: { least: 41, greatest: 41 },
  uncertainty: 1,
  fresh: { min: 20, max: 38 },
  target: { min: 26, max: 33 },
  wear: { max: 50 },
  openTo: 20,
  distance: '',
};

/** Where a number lies between two others, in shares of their distance. */
const share = (value: number, from: number, to: number): number => (value - from) / (to - from);

const of = (picture: Picture, name: string, attribute = 'cx'): number =>
  placesOf(picture, name, attribute)[0] ?? Number.NaN;

describe('a band', () => {
  const [min, wear] = [of(BAND, 'fresh-limit', 'x1'), of(BAND, 'wear-limit', 'x1')];

  it('has each mark where its number lies between the limits', () => {
    const cases: readonly (readonly [place: number | undefined, value: number])[] = [
      [placesOf(BAND, 'fresh-limit', 'x1')[1], 38],
      [of(BAND, 'target', 'x1'), 26],
      [of(BAND, 'target', 'x2'), 33],
      [placesOf(BAND, 'reading', 'cx')[0], 34],
      [placesOf(BAND, 'reading', 'cx')[1], 36],
      [of(BAND, 'before'), 41],
      [pointsOf(BAND, 'whisker')[0]?.[0], 33],
      [pointsOf(BAND, 'whisker').at(-1)?.[0], 37],
    ];
    for (const [place, value] of cases)
      expect(share(place ?? 0, min, wear)).toBeCloseTo(share(value, 20, 50), 3);
  });

  it('has a level whisker, and strokes across its ends that are upright', () => {
    const points = pointsOf(BAND, 'whisker');
    expect(points.length).toBeGreaterThan(4);
    const slanted = points.filter(([x, y], index) => {
      const [nextX, nextY] = points[index + 1] ?? [x, y];
      return x !== nextX && y !== nextY;
    });
    expect(slanted).toEqual([]);
  });

  it('has its outer limits at the same places whatever was read', () => {
    const other = { ...BAND, reading: { least: 62, greatest: 62 }, before: undefined };
    expect(of(other, 'fresh-limit', 'x1')).toBe(min);
    expect(of(other, 'wear-limit', 'x1')).toBe(wear);
  });

  it('marks what was before only where that is another reading', () => {
    expect(placesOf(BAND, 'before', 'cx')).toHaveLength(1);
    const same = { ...BAND, before: BAND.reading };
    expect(marksOf(same).filter(({ attributes }) => /before|change/.test(attributes.class ?? ''))).toEqual(
      [],
    );
  });

  it('shows what lies beyond its edge by an arrow and in figures', () => {
    const beyond: BandPicture = {
      ...BAND,
      reading: { least: 44, greatest: 90 },
      distance: 'loose by 4 thou',
    };
    expect(pointsOf(beyond, 'beyond')[0]).toEqual([160, 14]);
    expect(placesOf(beyond, 'reading', 'cx')).toHaveLength(1);
    expect(marksOf(beyond).some(({ text }) => text === 'loose by 4 thou')).toBe(true);
  });

  it('has an open end and no stroke where nothing limits it', () => {
    const open: BandPicture = { ...BAND, fresh: { max: 38 }, target: undefined, openTo: 0 };
    expect(of(open, 'usable', 'x1')).toBe(0);
    expect(placesOf(open, 'fresh-limit', 'x1')).toHaveLength(1);
  });

  it('is a picture by its title and its description, escaped', () => {
    const [svg, title, description] = marksOf(BAND);
    expect(svg?.attributes.role).toBe('img');
    expect(title).toMatchObject({ name: 'title', text: 'main bearing clearance 3' });
    expect(description).toMatchObject({ name: 'desc', text: 'loose by &lt;2> tenths &amp; worn' });
  });
});

describe('the turning torque', () => {
  const steps = [2, 4, 9].map((torque, index) => ({
    name: `piston ${index}`,
    torque,
    text: String(torque),
    jump: torque === 9 ? '5' : undefined,
    limit: { value: torque === 9 ? 12 : 6, text: `new max ${torque === 9 ? 12 : 6}` },
  }));
  const picture: Picture = {
    ...TOLD,
    kind: 'turning torque',
    unit: 'lbf ft',
    steps,
  };
  const limits = placesOf(picture, 'wear-limit', 'y1');
  const [zero, limit] = [of(picture, 'axis', 'y1'), limits[2] ?? 0];

  it('goes from left to right, each step as high as its torque', () => {
    expect(placesOf(picture, 'reading', 'cy').map((y) => share(y, zero, limit) * 12)).toEqual([
      expect.closeTo(2, 2),
      expect.closeTo(4, 2),
      expect.closeTo(9, 2),
    ]);
    const across = placesOf(picture, 'reading', 'cx');
    expect(across).toEqual([...across].sort((a, b) => a - b));
    expect(pointsOf(picture, 'course').map(([x]) => x)).toEqual(across);
  });

  it('has the limit of each step at that step, named where it changes', () => {
    expect(limits.map((y) => share(y, zero, limit) * 12)).toEqual(
      [6, 6, 12].map((each) => expect.closeTo(each, 2)),
    );
    expect(
      marksOf(picture)
        .filter(({ text }) => text.startsWith('new max'))
        .map(({ text }) => text),
    ).toEqual(['new max 6', 'new max 12']);
  });

  it('marks a jump at its step alone, with the rise', () => {
    expect(placesOf(picture, 'jump', 'cx')).toEqual([placesOf(picture, 'reading', 'cx')[2]]);
    expect(marksOf(picture).some(({ text }) => text === '9, rose 5')).toBe(true);
  });
});

describe('a trend', () => {
  const picture: Picture = {
    ...TOLD,
    kind: 'trend',
    lines: [
      {
        points: [
          { x: 1000, y: 20, uncertainty: 1 },
          { x: 3000, y: 30, uncertainty: 1 },
        ],
        course: [
          { x: 1000, y: 20, lower: 18, upper: 22 },
          { x: 3000, y: 30, lower: 28, upper: 32 },
        ],
        startedBy: undefined,
      },
      { points: [{ x: 4000, y: 15, uncertainty: 0 }], course: [], startedBy: 'main shells replaced' },
    ],
    limits: [{ y: 50, text: 'wear max 50' }],
    forecast: { from: 5000, to: 6000, text: 'wear max between 5000 and 6000 h' },
    x: { from: 1000, to: 6000, fromText: '1000 h', toText: '6000 h' },
    y: { from: 15, to: 50, fromText: '15', toText: '50' },
  };

  it('has readings and limit where hours and figures put them', () => {
    const [x, y] = [placesOf(picture, 'reading', 'cx'), placesOf(picture, 'reading', 'cy')];
    expect(share(x[1] ?? 0, x[0] ?? 0, x[2] ?? 0)).toBeCloseTo(share(3000, 1000, 4000), 3);
    expect(share(y[1] ?? 0, y[2] ?? 0, y[0] ?? 0)).toBeCloseTo(share(30, 15, 20), 2);
    expect(share(of(picture, 'wear-limit', 'y1'), y[2] ?? 0, y[0] ?? 0)).toBeCloseTo(share(50, 15, 20), 2);
  });

  it('says when the limit is reached as an interval on the axis', () => {
    const [x] = [placesOf(picture, 'reading', 'cx')];
    const between = [of(picture, 'forecast', 'x1'), of(picture, 'forecast', 'x2')];
    expect(between.map((at) => share(at, x[0] ?? 0, x[2] ?? 0) * 3000 + 1000)).toEqual([
      expect.closeTo(5000, 0),
      expect.closeTo(6000, 0),
    ]);
    expect(of(picture, 'forecast', 'y1')).toBe(of(picture, 'axis', 'y1'));
  });

  it('begins another line where a part was replaced', () => {
    expect(placesOf(picture, 'start', 'x1')).toHaveLength(1);
    expect(marksOf(picture).some(({ text }) => text === 'main shells replaced')).toBe(true);
  });
});

describe('a bore', () => {
  const field = (value: number, isOut = false) => ({ value, text: String(value), isOut });
  const picture: Picture = {
    ...TOLD,
    kind: 'bore map',
    stations: ['top', 'bottom'],
    directions: ['thrust', 'axial'],
    fields: [
      [field(11, true), field(8)],
      [field(4), undefined],
    ],
    fresh: 5,
    worn: 10,
    margin: ['greatest 11', 'taper 7'],
  };

  it('has stations down and directions across, each field with its figure and its shade', () => {
    const boxes = marksOf(picture).filter(({ name }) => name === 'rect');
    expect(boxes.map(({ attributes }) => attributes.class)).toEqual([
      'field shade-4',
      'field shade-3',
      'field shade-0',
      'field empty',
    ]);
    expect(boxes[0]?.attributes.y).toBe(boxes[1]?.attributes.y);
    expect(boxes[0]?.attributes.x).toBe(boxes[2]?.attributes.x);
    expect(marksOf(picture).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['11', '8', '4', 'taper 7']),
    );
  });

  it('hatches what is out, and nothing else', () => {
    const out = placesOf(picture, 'hatch', 'x1');
    expect(out).toHaveLength(6);
    expect(Math.max(...out)).toBeLessThanOrEqual(54 + 66);
  });

  it('is the darker the nearer it is to its wear limit', () => {
    expect([4, 5, 6, 7.5, 10, 12].map((value) => shadeOf(value, 5, 10))).toEqual([0, 0, 1, 2, 4, 4]);
  });
});

describe('a journal', () => {
  const station = (name: string, least: number, greatest: number) => ({ name, least, greatest, text: '' });
  const picture: Picture = {
    ...TOLD,
    kind: 'journal',
    stations: [station('front', 3.246, 3.247), station('rear', 3.248, 3.248)],
    limits: [{ value: 3.245, text: 'wear min' }],
  };

  it('is as thick at each station as it was read, the same above and below its axis', () => {
    const axis = of(picture, 'centre', 'y1');
    const radii = pointsOf(picture, 'profile').map(([, y]) => Math.abs(y - axis));
    expect(radii[0]).toBe(radii[3]);
    const limit = Math.abs(of(picture, 'wear-limit', 'y1') - axis);
    expect(share(radii[0] ?? 0, limit, radii[1] ?? 0)).toBeCloseTo(share(3.247, 3.245, 3.248), 2);
  });

  it('says how far its differences are exaggerated', () => {
    // 3 thou of 3.248 in drawn as 24 of 42: 24 / 0.003 against 42 / 3.248.
    expect(exaggerationText(3.245, 3.248)).toBe('differences drawn 620 times too large');
    expect(exaggerationText(3.248, 3.248)).toBe('no difference between its diameters');
  });
});

describe('a joint', () => {
  const picture: Picture = {
    ...TOLD,
    kind: 'joint',
    form: 'caps',
    fasteners: [
      { name: '1L', x: 0, y: 0, order: 3 },
      { name: '1R', x: 0, y: 1, order: 4 },
      { name: '2L', x: 1, y: 0, order: 1 },
      { name: '2R', x: 1, y: 1, order: undefined },
    ],
  };

  it('has each fastener at its place with its number in the order', () => {
    const [x, y] = [placesOf(picture, 'fastener', 'cx'), placesOf(picture, 'fastener', 'cy')];
    expect(x[0]).toBe(x[1]);
    expect(x[2]).toBeGreaterThan(x[0] ?? 0);
    expect(y[0]).toBe(y[2]);
    expect(y[1]).toBeGreaterThan(y[0] ?? 0);
    const numbers = marksOf(picture).filter(({ attributes }) => attributes.class === 'order');
    expect(numbers.map(({ text }) => text)).toEqual(['3', '4', '1', '–']);
  });

  it('frames each cap', () => {
    expect(placesOf(picture, 'outline', 'x')).toHaveLength(2);
  });
});
