import { describe, expect, it } from 'vitest';
import { clearance, clearanceThroughShells, pistonClearance } from '../../src/characteristics/clearance.ts';
import type { Grid, Measured } from '../../src/characteristics/grid.ts';
import { fraction } from '../../src/quantity/fraction.ts';
import { asWritten, gridOfRows, INCH } from './exampleGrid.ts';

const grid = (
  rows: readonly (readonly string[])[],
  stations?: readonly string[],
  directions?: readonly string[],
): Grid => gridOfRows(rows, INCH, stations, directions);

const inTenths = (found: Measured | undefined): readonly string[] | undefined =>
  found && [found.least, found.mean, found.greatest].map(({ amount }) => asWritten(amount, INCH, '0.00000'));

describe('a journal turns in its bore', () => {
  it('so the least is the smallest bore less the greatest journal, the greatest the other way round', () => {
    const bore = grid([['3.2507', '3.2511']], [], ['a', 'b']);
    const journal = grid([['3.2478', '3.2475']], [], ['a', 'b']);
    expect(inTenths(clearance(bore, journal))).toEqual(['0.00290', '0.00325', '0.00360']);
  });

  it('and every direction of it counts, even one named like the bore’s', () => {
    const bore = grid([['3.2507', '3.2511']], [], ['vertical', 'horizontal']);
    const journal = grid([['3.2478', '3.2471']], [], ['vertical', 'horizontal']);
    expect(inTenths(clearance(bore, journal))).toEqual(['0.00290', '0.00325', '0.00360']);
  });

  it.each(['vertical', 'square'])(
    'and of the bore only the %s direction counts, where it is named',
    (carrying) => {
      const bore = grid([['3.2520', '3.2507', '3.2530']], [], ['+45', carrying, '-45']);
      expect(inTenths(clearance(bore, grid([['3.2478']])))).toEqual(['0.00290', '0.00290', '0.00290']);
    },
  );
});

describe('stations', () => {
  const bore = grid([['3.2510'], ['3.2520']], ['front', 'rear']);

  it('pair by name, in whatever order they were read', () => {
    const journal = grid([['3.2490'], ['3.2480']], ['rear', 'front']);
    expect(inTenths(clearance(bore, journal))).toEqual(['0.00300', '0.00300', '0.00300']);
  });

  it('pair by order where they have no names in common and are as many', () => {
    const journal = grid([['3.2490'], ['3.2480']]);
    expect(inTenths(clearance(bore, journal))).toEqual(['0.00200', '0.00300', '0.00400']);
  });

  it('pair each with each where they are not as many', () => {
    expect(inTenths(clearance(bore, grid([['3.2480']])))).toEqual(['0.00300', '0.00350', '0.00400']);
    const three = grid([['3.2480'], ['3.2481'], ['3.2482']]);
    expect(inTenths(clearance(bore, three))).toEqual(['0.00280', '0.00340', '0.00400']);
  });

  it('leave out what was not taken', () => {
    const journal = grid([['~'], ['3.2480']], ['front', 'rear']);
    expect(inTenths(clearance(bore, journal))).toEqual(['0.00400', '0.00400', '0.00400']);
  });

  it('count in the mean only where they pair, so that it lies between the least and the greatest', () => {
    const wide = grid([['3.2510'], ['3.2610']], ['front', 'rear']);
    const journal = grid([['3.2480'], ['3.2480']], ['front', 'middle']);
    expect(inTenths(clearance(wide, journal))).toEqual(['0.00300', '0.00300', '0.00300']);
  });

  it('give nothing where no pair of readings is left', () => {
    expect(
      clearance(grid([['3.2510'], ['~']], ['front', 'rear']), grid([['~'], ['3.2480']], ['front', 'rear'])),
    ).toBeUndefined();
    expect(clearance(grid([['~']]), grid([['3.2480']]))).toBeUndefined();
  });
});

describe('through the shells, before assembly', () => {
  const housing = grid([['3.5010']]);
  const journal = grid([['3.2480']]);

  it('one thickness stands for both halves', () => {
    expect(inTenths(clearanceThroughShells(housing, grid([['0.1250']]), journal))?.[0]).toBe('0.00300');
  });

  it('two are the upper and the lower half, and are summed', () => {
    const halves = grid([['0.1247'], ['0.1252']], ['upper', 'lower']);
    expect(inTenths(clearanceThroughShells(housing, halves, journal))?.[0]).toBe('0.00310');
  });

  it('the housing counts in the direction that carries', () => {
    const measured = grid([['3.5030', '3.5010']], [], ['+45', 'square']);
    expect(inTenths(clearanceThroughShells(measured, grid([['0.1250']]), journal))).toEqual([
      '0.00300',
      '0.00300',
      '0.00300',
    ]);
  });

  it('the crush of the shells stands in the budget as a term of the model', () => {
    const found = clearanceThroughShells(housing, grid([['0.1250']]), journal);
    expect([...(found?.mean.terms.keys() ?? [])]).toEqual(['crush of the shells (model)']);
  });

  it('without a thickness there is nothing', () => {
    expect(clearanceThroughShells(housing, grid([['~']]), journal)).toBeUndefined();
  });
});

describe('a piston in its cylinder', () => {
  it('is measured against the thrust direction where it is named', () => {
    const cylinder = grid([['4.2500', '4.2530']], [], ['thrust', 'axial']);
    expect(inTenths(pistonClearance(cylinder, grid([['4.2450']])))).toEqual([
      '0.00500',
      '0.00500',
      '0.00500',
    ]);
  });

  it('is judged at its least and its greatest down the bore', () => {
    const cylinder = grid([['4.2500'], ['4.2504'], ['4.2502']], ['top', 'middle', 'bottom']);
    expect(inTenths(pistonClearance(cylinder, grid([['4.2450']])))).toEqual([
      '0.00500',
      '0.00520',
      '0.00540',
    ]);
  });
});

describe('means that do not come out even', () => {
  it('stay exact: a mean of three less a mean of two', () => {
    const bore = grid([['3.2510'], ['3.2511'], ['3.2511']]);
    const journal = grid([['3.2480'], ['3.2481']]);
    const mean = clearance(bore, journal)?.mean.amount;
    // (3.2510 + 3.2511 + 3.2511) / 3 − (3.2480 + 3.2481) / 2 in = 0.00301666… in
    expect(mean && mean.n * 6n).toEqual(mean && (fraction(254_000_000).n * 181n * mean.d) / 10_000n);
  });
});
