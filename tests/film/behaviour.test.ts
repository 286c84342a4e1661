import fc from 'fast-check';
import { expect, it } from 'vitest';
import { believedFilm } from '../../src/film/believed.ts';
import { monotoneCurve } from '../../src/film/monotoneCurve.ts';
import { clearancesBetween, spreadsOver } from '../../src/film/spread.ts';
import { viscosityCurve } from '../../src/film/viscosity.ts';
import { temperatureRise, warmFilm } from '../../src/film/warmFilm.ts';
import { runs } from '../propertyRuns.ts';

const someBearing = fc
  .record({
    diameter: fc.double({ min: 0.02, max: 0.15, noNaN: true }),
    ratio: fc.double({ min: 0.15, max: 1.5, noNaN: true }),
    relative: fc.double({ min: 5e-4, max: 2e-3, noNaN: true }),
  })
  .map(({ diameter, ratio, relative }) => ({
    diameter,
    length: diameter * ratio,
    clearance: diameter * relative,
  }));
const someDuty = fc.record({
  revolutions: fc.double({ min: 1, max: 150, noNaN: true }),
  viscosity: fc.double({ min: 0.002, max: 0.5, noNaN: true }),
  load: fc.double({ min: 10, max: 50_000, noNaN: true }),
});

it('a film thins with its load and goes to nothing with its speed', () => {
  fc.assert(
    fc.property(someBearing, someDuty, (bearing, duty) => {
      const thickness = (more: Partial<typeof duty>) =>
        believedFilm(bearing, { ...duty, ...more }).film.thickness;
      expect(thickness({ load: duty.load * 1.5 })).toBeLessThan(thickness({}));
      expect(thickness({ revolutions: duty.revolutions / 1.5 })).toBeLessThan(thickness({}));
      expect(thickness({ revolutions: duty.revolutions * 1e-9 })).toBeLessThan(bearing.clearance * 1e-3);
    }),
    runs(200),
  );
});

const OIL = viscosityCurve({ temperature: 40, viscosity: 105 }, { temperature: 100, viscosity: 14.2 });

it('a warm film has the viscosity of its own heat', () => {
  fc.assert(
    fc.property(someBearing, someDuty, (bearing, { revolutions, load }) => {
      const viscosityAt = (temperature: number) => OIL(temperature) * 850e-6;
      const film = warmFilm(bearing, { revolutions, load, inlet: 90, viscosityAt });
      expect(film.viscosity).toBeCloseTo(viscosityAt(90 + film.rise / 2), 12);
      if (film.rise < 399) expect(temperatureRise(film.film) / film.rise).toBeCloseTo(1, 5);
    }),
    runs(100),
  );
});

it('believes the charts of a bearing that they reach, and doubts a film thinner than theirs', () => {
  const bearing = { diameter: 0.05, length: 0.02, clearance: 0.00005 };
  const duty = { revolutions: 50, viscosity: 0.01, load: 3000 };
  expect(believedFilm(bearing, duty)).toMatchObject({ theory: 'finite', doubts: [] });
  expect(believedFilm(bearing, { ...duty, load: 300_000 }).doubts).toEqual(['beyond the charts']);
  const narrow = { ...bearing, length: 0.01 };
  expect(believedFilm(narrow, { ...duty, load: 100 })).toMatchObject({ theory: 'short', doubts: [] });
  expect(believedFilm(narrow, duty)).toMatchObject({ theory: 'short', doubts: ['short theory off'] });
});

it('an interval is walked through, so that a top inside it is seen', () => {
  const { y } = spreadsOver(clearancesBetween(-1, 1), (x) => ({ y: 1 - x * x }));
  expect(y).toEqual({ least: 0, greatest: 1 });
});

it('a curve rises and falls only where its points do', () => {
  const curve = monotoneCurve([
    [0, 0],
    [1, 10],
    [2, 10.1],
    [5, 11],
  ]);
  const heights = Array.from({ length: 101 }, (_, index) => curve(index / 20));
  expect(heights).toEqual(heights.toSorted((a, b) => a - b));
  expect([curve(0), curve(1), curve(2), curve(5)]).toEqual([0, 10, 10.1, 11]);
});
