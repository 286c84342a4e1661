import { describe, expect, it } from 'vitest';
import { toNumber } from '../../src/quantity/fraction.ts';
import { engineIn, type Files, refusalsOf, rowsOf, sessionOf, verdictsOf } from '../shopOf.ts';

const shop = (characteristics: string): string =>
  `kind: shop\nunits: { length: in }\ncharacteristics:\n${characteristics}`;

const WEAR = shop(
  '  cylinder_wear: { label: cylinder wear, quantity: length, positions: cylinder, formula: "cylinder_bore - bore" }\n',
);

const files = (readings: string, more: Files = {}): Files => ({
  'shop.yaml': WEAR,
  'e/engine.yaml': engineIn('in', 'sizes: { bore: 4.125 }\n'),
  'e/l.yaml': 'kind: limits\nsource: Invented.\nlimits: { cylinder_wear: { wear: { max: 0.0080 } } }\n',
  'e/s.yaml': sessionOf('teardown', readings),
  ...more,
});

describe('a characteristic that a shop adds', () => {
  it('is worked out by its formula, exactly on its limit and beyond it', () => {
    expect(verdictsOf(files('- { measure: cylinder_bore, at: { 1: 4.1330, 2: 4.1331 } }'))).toMatchObject({
      'cylinder_wear 1': 'ok',
      'cylinder_wear 2': 'out',
    });
  });

  it('takes the mean of what was read', () => {
    const grid = '- { measure: cylinder_bore, stations: [top, bottom], at: { 1: [4.1320, 4.1340] } }';
    expect(verdictsOf(files(grid))).toMatchObject({ 'cylinder_wear 1': 'ok' });
  });

  it('carries the error of what it is worked out from', () => {
    const rows = rowsOf(files('- { measure: cylinder_bore, at: { 1: 4.1330 } }'));
    const uOf = (id: string) =>
      rows.find(({ characteristic }) => characteristic.id === id)?.routes[0]?.route.u ?? 0;
    expect(uOf('cylinder_bore')).toBeGreaterThan(0);
    expect(uOf('cylinder_wear')).toBeCloseTo(uOf('cylinder_bore'), 6);
  });

  it('is scaled with the slope of its formula', () => {
    const twice = WEAR.replace('cylinder_bore - bore', '2 * cylinder_bore - 2 * bore');
    const rows = rowsOf(files('- { measure: cylinder_bore, at: { 1: 4.1330 } }', { 'shop.yaml': twice }));
    const [bore, wear] = ['cylinder_bore', 'cylinder_wear'].map((id) =>
      rows.find(({ characteristic }) => characteristic.id === id),
    );
    expect(wear?.routes[0]?.route.u).toBeCloseTo(2 * (bore?.routes[0]?.route.u ?? 0), 3);
    expect(toNumber(wear?.routes[0]?.mean ?? { n: 0n, d: 1n })).toBe(0.016 * 254_000_000);
  });

  it('may be read directly as well, and then has two routes', () => {
    const rows = rowsOf(
      files(
        '- { measure: cylinder_bore, at: { 1: 4.1330 } }\n- { measure: cylinder_wear, at: { 1: 0.0079 } }',
      ),
    );
    expect(rows.find(({ characteristic }) => characteristic.id === 'cylinder_wear')?.routes).toHaveLength(2);
  });

  it('whose formula cannot be read is refused where it stands', () => {
    const bad = WEAR.replace('cylinder_bore - bore', 'cylinder_bore -');
    expect(refusalsOf(files('- { measure: cylinder_bore, at: { 1: 4.13 } }', { 'shop.yaml': bad }))).toEqual([
      'shop.yaml:4:90 formula',
    ]);
  });
});
