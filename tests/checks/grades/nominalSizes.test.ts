import { describe, expect, it } from 'vitest';
import { engineIn, type Files, findingsOf, limitsOf, rowsOf, sessionOf } from '../../shopOf.ts';

const shop = (limits: string, blocks: string, said: string, more: Files = {}): Files => ({
  'e/engine.yaml': engineIn('in', 'sizes: { bore: 4.0000, stroke: 5.0000, main_journal_diameter: 3.0000 }\n'),
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('rebuild', blocks, `${said}\n`),
  ...more,
});

/** The greatest of new parts at each position, in ten-thousandths of an inch. */
const greatest = (files: Files, measure: string): Readonly<Record<string, number>> =>
  Object.fromEntries(
    rowsOf(files)
      .filter(({ characteristic }) => characteristic.id === measure)
      .map(({ position, limits }) => [
        position.name,
        Number((limits.bands.new?.max?.amount.n ?? 0n) / 2_540n) / 10,
      ]),
  );

describe('a limit that is worked out', () => {
  it('sees the bore that was made, cylinder by cylinder', () => {
    const files = shop(
      'ring_end_gap: { new: { max: { formula: "0.005 * bore" } } }',
      '- { measure: ring_end_gap, at: { 1 top: 0.018, 2 top: 0.018 } }',
      'machined: [{ part: cylinders, at: 2, size: 0.060 over }]',
    );
    expect(greatest(files, 'ring_end_gap')).toMatchObject({ '1 top': 200, '2 top': 203 });
  });

  it('sees the bore of the whole engine where all are of one size, and the stated one where they are not', () => {
    const files = (said: string) =>
      shop(
        'crankshaft_end_play: { new: { max: { formula: "0.005 * bore" } } }',
        '- { measure: crankshaft_end_play, value: 0.010 }',
        said,
      );
    const all = files('machined: [{ part: cylinders, size: 0.060 over }]');
    const one = files('machined: [{ part: cylinders, at: 2, size: 0.060 over }]');
    expect(greatest(all, 'crankshaft_end_play')).toEqual({ engine: 203 });
    expect(greatest(one, 'crankshaft_end_play')).toEqual({ engine: 200 });
  });

  it('is not moved as well: a piston is made for the bore that it names', () => {
    const files = shop(
      'piston_diameter: { new: { max: { formula: "bore - 0.0040" } } }',
      '- { measure: piston_diameter, at: { 1: 4.0155, 2: 3.9955 } }',
      'machined: [{ part: cylinders, at: 1, size: 0.020 over }]',
    );
    expect(greatest(files, 'piston_diameter')).toMatchObject({ 1: 40_160, 2: 39_960 });
  });

  it('is moved where it names nothing', () => {
    const files = shop(
      'main_journal_diameter: { new: { max: { formula: "2.9990 + 0.0010" } } }',
      '- { measure: main_journal_diameter, at: { 1: 2.9895 } }',
      'fitted: { crankshaft: { main: 0.010 under } }',
    );
    expect(greatest(files, 'main_journal_diameter')).toMatchObject({ 1: 29_900 });
  });
});

describe("a shop's own formula", () => {
  it('sees the bore that was made', () => {
    const rows = rowsOf(
      shop(
        'piston_diameter: { new: { max: 4.1 } }',
        '- { measure: piston_diameter, at: { 1: 4.0155 } }',
        'machined: [{ part: cylinders, at: 1, size: 0.020 over }]',
        {
          'e/shop.yaml':
            'kind: shop\nunits: { length: in }\ncharacteristics:\n  nominal_clearance: { label: nominal clearance, quantity: length, positions: cylinder, formula: bore - piston_diameter }\n',
        },
      ),
    );
    const own = rows.find(({ characteristic }) => characteristic.id === 'nominal_clearance');
    expect(own?.routes[0]?.mean.n).toBe(45n * 25_400n);
  });
});

describe('a slip of the pen', () => {
  it('is looked for around the size that is fitted', () => {
    const files = shop(
      'main_journal_diameter: { new: 2.9990 to 3.0000, wear: { min: 2.9980 } }',
      '- { measure: main_journal_diameter, at: { 1: 2.9895, 2: 2.9849, 3: 2.9894 } }',
      'fitted: { crankshaft: { main: 0.010 under } }',
    );
    const [told] = findingsOf(files).filter(({ code }) => code === 'reading/implausible');
    expect(told?.message).toMatch(/^main journal diameter 2: 2\.9894\? written 2\.9849: /);
  });

  it('is none where a reading lies within the limits of its size', () => {
    const files = shop(
      'main_journal_diameter: { new: 2.9990 to 3.0000, wear: { min: 2.9980 } }',
      '- { measure: main_journal_diameter, at: { 1: 2.9895, 2: 2.9891, 3: 2.9894 } }',
      'fitted: { crankshaft: { main: 0.010 under } }',
    );
    expect(findingsOf(files).filter(({ code }) => code === 'reading/implausible')).toEqual([]);
  });

  it('is looked for around the nominal size, moved, where nothing is limited', () => {
    const files = (said: string) =>
      shop(
        'crankshaft_end_play: { new: { max: 0.010 } }',
        '- { measure: main_journal_diameter, at: { 1: 2.9695, 2: 2.9659, 3: 2.9694 } }',
        said,
      );
    const isTold = (said: string) =>
      findingsOf(files(said)).some(({ code }) => code === 'reading/implausible');
    expect(isTold('fitted: { crankshaft: { main: 0.030 under } }')).toBe(false);
    expect(isTold('fitted: { crankshaft: { main: std } }')).toBe(true);
  });
});
