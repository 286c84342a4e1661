import { describe, expect, it } from 'vitest';
import { boreTaper, hasDistances, journalTaper, outOfRound } from '../../src/characteristics/form.ts';
import type { Grid, Measured } from '../../src/characteristics/grid.ts';
import { fraction, parseDecimal } from '../../src/quantity/fraction.ts';
import { toBase } from '../../src/quantity/units.ts';
import { asWritten, gridOfRows, INCH } from './exampleGrid.ts';

const inches = (found: Measured | undefined): string | undefined =>
  found && asWritten(found.greatest.amount, INCH, '0.00000');

const column = (figures: readonly string[], stations: readonly string[]): Grid =>
  gridOfRows(
    figures.map((figure) => [figure]),
    INCH,
    stations,
  );

describe('out of round', () => {
  const round = (rows: readonly (readonly string[])[]) => inches(outOfRound(gridOfRows(rows, INCH)));

  it.each([
    ['the full difference at a station, not half of it', [['3.2478', '3.2471']], '0.00070'],
    [
      'of several stations the worst',
      [
        ['3.2478', '3.2477'],
        ['3.2479', '3.2470'],
      ],
      '0.00090',
    ],
    [
      'never across stations: that is taper',
      [
        ['3.2478', '3.2478'],
        ['3.2470', '3.2470'],
      ],
      '0.00000',
    ],
    ['of three directions the greatest less the least', [['3.2478', '3.2471', '3.2475']], '0.00070'],
    [
      'a station with one reading is left out',
      [
        ['3.2478', '~'],
        ['3.2477', '3.2475'],
      ],
      '0.00020',
    ],
  ])('is %s', (_, rows, expected) => expect(round(rows)).toBe(expected));

  it('cannot be had from single readings', () => {
    expect(round([['3.2478']])).toBeUndefined();
    expect(round([['3.2478'], ['3.2470']])).toBeUndefined();
    expect(round([['3.2478', '~']])).toBeUndefined();
  });
});

describe('taper', () => {
  const three = ['top', 'middle', 'bottom'];

  it.each([
    ['of a journal is one end less the other', journalTaper, ['3.2478', '3.2490', '3.2475'], '0.00030'],
    ['of a cylinder is the greatest less the least', boreTaper, ['4.1262', '4.1265', '4.1254'], '0.00110'],
    ['of a journal of two stations is their difference', journalTaper, ['3.2471', '3.2478'], '0.00070'],
  ] as const)('%s', (_, taper, figures, expected) =>
    expect(inches(taper(column(figures, three), {}))).toBe(expected),
  );

  it('is taken as the limit says, whatever the part', () => {
    const grid = column(['3.2478', '3.2490', '3.2475'], three);
    expect(inches(journalTaper(grid, { by: 'range' }))).toBe('0.00150');
    expect(inches(boreTaper(grid, { by: 'ends' }))).toBe('0.00030');
  });

  it('is worked out in each direction, and the worst counts', () => {
    const grid = gridOfRows(
      [
        ['3.2478', '3.2478'],
        ['3.2476', '3.2470'],
      ],
      INCH,
      ['front', 'rear'],
    );
    expect(inches(journalTaper(grid, {}))).toBe('0.00080');
  });

  it('names the larger end, and a barrel or a hollow between the ends', () => {
    expect(journalTaper(column(['3.2478', '3.2475'], ['front', 'rear']), {})?.remark).toBe('front larger');
    expect(journalTaper(column(['3.2471', '3.2478'], ['front', 'rear']), {})?.remark).toBe('rear larger');
    expect(journalTaper(column(['3.2478', '3.2490', '3.2475'], three), {})?.remark).toBe(
      'top larger, barrel',
    );
    expect(journalTaper(column(['3.2478', '3.2470', '3.2478'], three), {})?.remark).toBe('hollow');
    expect(journalTaper(column(['3.2478', '3.2478'], ['front', 'rear']), {})?.remark).toBeUndefined();
  });

  it('cannot be had from one station', () => {
    expect(journalTaper(column(['3.2478'], ['front']), {})).toBeUndefined();
    expect(boreTaper(column(['3.2478', '~'], ['front', 'rear']), {})).toBeUndefined();
  });

  it('is taken for a length where the stations carry their distances', () => {
    const at = (distance: string) => toBase(parseDecimal(distance), INCH);
    const plain = column(['3.2478', '3.2472'], ['front', 'rear']);
    const grid: Grid = {
      ...plain,
      stations: [
        { name: 'front', distance: at('0.25') },
        { name: 'rear', distance: at('1.75') },
      ],
    };
    const perInch = { per: at('1') };
    expect(inches(journalTaper(grid, perInch))).toBe('0.00040');
    expect(hasDistances(grid)).toBe(true);
    expect(journalTaper(plain, perInch)).toBeUndefined();
    expect(hasDistances(plain)).toBe(false);
  });

  it('over two stations at one distance is their difference', () => {
    const plain = column(['3.2478', '3.2472'], ['a', 'b']);
    const grid: Grid = {
      ...plain,
      stations: plain.stations.map((each) => ({ ...each, distance: fraction(0) })),
    };
    expect(inches(journalTaper(grid, { per: fraction(1) }))).toBe('0.00060');
  });
});

describe('what explain says of a round part that is measured with some spread', () => {
  /** Park and Miller's generator, and a normal sample by Box and Muller: the same numbers on every run. */
  const normal = () => {
    let state = 20_260_203;
    const uniform = () => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    return { uniform, next: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()) };
  };

  it.each([0.3, 0.4, 0.5])('four readings show a tenth more than half of the time at %f tenth', (spread) => {
    const { uniform, next } = normal();
    const times = 2000;
    let shown = 0;
    for (let time = 0; time < times; time++) {
      const size = 32_478 + uniform();
      const read = () => String(Math.round(size + spread * next()) / 10_000);
      const found = outOfRound(
        gridOfRows(
          [
            [read(), read()],
            [read(), read()],
          ],
          INCH,
        ),
      );
      if (found !== undefined && found.greatest.amount.n > 0n) shown += 1;
    }
    expect(shown / times).toBeGreaterThan(0.5);
    expect(shown / times).toBeLessThan(0.85);
  });
});
