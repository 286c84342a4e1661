import { expect, it } from 'vitest';
import type { FilmPicture } from '../../../src/output/page/pictures/film.ts';
import { placesOf, pointsOf } from './drawn.ts';

const PICTURE: FilmPicture = {
  kind: 'film',
  title: 'film of the main bearings, um',
  description: 'over clearances',
  curve: [
    { x: 0.02, y: 4 },
    { x: 0.06, y: 8 },
    { x: 0.1, y: 6 },
  ],
  bearings: [{ x: 0.06, y: 8, uncertainty: 0.01 }],
  limits: [
    { x: 0.03, text: 'new min' },
    { x: 0.09, text: 'wear max' },
  ],
  x: { from: 0.02, to: 0.1, fromText: '0.020', toText: '0.100 mm' },
  y: { from: 0, to: 8, fromText: '0', toText: '8' },
};

it('a film has curve, bearings with their uncertainty, and limits, each where its clearance puts it', () => {
  const [[left = 0] = [], [middle = 0, top = 0] = [], [right = 0] = []] = pointsOf(PICTURE, 'course');
  expect(middle - left).toBeCloseTo(right - middle, 1);
  expect(placesOf(PICTURE, 'reading', 'cx')).toEqual([middle]);
  expect(placesOf(PICTURE, 'reading', 'cy')).toEqual([top]);
  const width = right - left;
  expect((placesOf(PICTURE, 'whisker', 'x2')[0] ?? 0) - middle).toBeCloseTo(width / 8, 1);
  expect(placesOf(PICTURE, 'wear-limit', 'x1').map((each) => (each - left) / width)).toEqual([
    expect.closeTo(1 / 8, 3),
    expect.closeTo(7 / 8, 3),
  ]);
});
