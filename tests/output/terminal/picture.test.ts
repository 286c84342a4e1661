import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawBand, LINES, type PictureOf, PLAIN } from '../../../src/output/terminal/picture.ts';
import { evenly } from '../../evenly.ts';

const band = (least: number, greatest = least, more: Partial<PictureOf> = {}): PictureOf => ({
  least,
  greatest,
  min: 20,
  max: 40,
  target: undefined,
  openTo: undefined,
  ...more,
});

const drawn = (of: PictureOf): string => drawBand(of, 19, PLAIN);

describe('where a reading lies in its band', () => {
  it.each([
    ['in the middle', band(30), '   |-----o-----|'],
    ['exactly on its least', band(20), '   o-----------|'],
    ['exactly on its greatest', band(40), '   |-----------o'],
    ['just below it', band(19.9), '  o|-----------|'],
    ['just above it', band(40.1), '   |-----------|o'],
    ['far below it', band(-100), '<  |-----------|'],
    ['far above it', band(500), '   |-----------|  >'],
    ['over a stretch', band(25, 35), '   |--o+++++o--|'],
    ['over more than all of it', band(0, 90), '<+++++++++++++++++>'],
    ['with a target', band(25, 25, { target: { min: 28, max: 32 } }), '   |--o-===----|'],
    [
      'with a target that is open above',
      band(25, 25, { target: { min: 30, max: undefined } }),
      '   |--o--======|',
    ],
    ['with no least', band(20, 20, { min: undefined, openTo: 0 }), '--------o------|'],
    ['with no least, above its greatest', band(41, 41, { min: undefined, openTo: 0 }), '---------------|o'],
    ['with no greatest', band(30, 30, { max: undefined, openTo: 40 }), '   |-------o-------'],
  ])('%s', (_, of, picture) => {
    expect(drawn(of)).toBe(picture);
  });

  it.each([
    ['nothing limits it', band(30, 30, { min: undefined, max: undefined })],
    ['its limits leave no room', band(30, 30, { min: 40, max: 40 })],
  ])('is not drawn where %s', (_, of) => {
    expect(drawn(of)).toBe('');
  });

  it('has the same shape in both sets of characters', () => {
    const pairs = Object.keys(PLAIN).map((name) => [
      LINES[name as keyof typeof LINES],
      PLAIN[name as keyof typeof PLAIN],
    ]);
    const plain = [...drawBand(band(25, 45, { target: { min: 28, max: 32 } }), 25, LINES)]
      .map((glyph) => pairs.find(([line]) => line === glyph)?.[1] ?? glyph)
      .join('');
    expect(plain).toBe(drawBand(band(25, 45, { target: { min: 28, max: 32 } }), 25, PLAIN));
  });

  it('never shows a reading inside that is out, nor out that is inside, nor a line wider than asked', () => {
    const number = evenly(-1e3, 1e3);
    fc.assert(
      fc.property(number, number, number, fc.integer({ min: 13, max: 40 }), (a, b, value, width) => {
        const [min, max] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(max - min > 1e-6);
        const picture = drawBand(band(value, value, { min, max }), width, PLAIN);
        expect(picture.length).toBeLessThanOrEqual(width);
        const at = picture.search(/[o<>]/);
        const ends = [picture.indexOf('|'), picture.lastIndexOf('|')];
        if (value < min) expect(at).toBeLessThan(ends[0] ?? Number.NaN);
        else if (value > max) expect(at).toBeGreaterThan(ends[1] ?? Number.NaN);
        else expect(picture.trimStart()).toMatch(/^(?:\|-*o-*\||o-*\||\|-*o)$/);
      }),
    );
  });
});
