import { describe, expect, it } from 'vitest';
import { engineIn, refusalsOf, shopOf, verdictsOf } from '../../shopOf.ts';

const ENGINE = 'kind: engine\nname: A\nlayout: { mains: 3, cylinders: 4 }\n';
const shop = (rest: string) => `kind: shop\nunits: { length: in }\n${rest}`;
const session = (readings: string) =>
  `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - ${readings}\n`;

describe('a shop document', () => {
  it('sets the rule for every engine below it; the nearest shop wins, and an engine over both', () => {
    const rule = (files: Record<string, string>) => shopOf(files).engine?.rule;
    expect(rule({ 'e/engine.yaml': ENGINE })).toBe('simple');
    expect(rule({ 'shop.yaml': shop('decision_rule: guarded\n'), 'e/engine.yaml': ENGINE })).toBe('guarded');
    const near = {
      'shop.yaml': shop('decision_rule: guarded\n'),
      'row/shop.yaml': shop('decision_rule: simple\n'),
    };
    expect(rule({ ...near, 'row/e/engine.yaml': ENGINE })).toBe('simple');
    expect(rule({ ...near, 'row/e/engine.yaml': `${ENGINE}decision_rule: guarded\n` })).toBe('guarded');
  });

  it('gives the grids, and the nearest shop’s stand over those higher up', () => {
    const grids = (names: string) => shop(`grids: { cylinder: { stations: ${names} } }\n`);
    const { engine } = shopOf({
      'shop.yaml': grids('[x, y]'),
      'row/shop.yaml': grids('[top, bottom]'),
      'row/e/engine.yaml': ENGINE,
      'row/e/s.yaml': session('{ measure: cylinder_bore, at: { 1: [4.1, 4.2] } }'),
    });
    expect(engine?.sessions[0]?.blocks[0]?.positions[0]?.stations.map(({ name }) => name)).toEqual([
      'top',
      'bottom',
    ]);
  });

  it('adds characteristics, and so may limits', () => {
    const own =
      'characteristics: { deck_height: { label: deck height, quantity: length, positions: cylinder } }\n';
    const files = {
      'e/engine.yaml': engineIn('in'),
      'e/l.yaml': `kind: limits\nsource: Invented.\n${own}limits: { deck_height: { new: 0.010 to 0.020 } }\n`,
      'e/s.yaml': session('{ measure: deck_height, at: { 1: 0.020, 2: 0.021, 3: 0.010, 4: 0.009 } }'),
    };
    expect(Object.values(verdictsOf(files))).toEqual(['ok', 'out', 'ok', 'out']);
  });

  it('with a fault in it no engine below is judged', () => {
    const files = { 'shop.yaml': shop('decision_rule: strict\n'), 'e/engine.yaml': engineIn('in') };
    expect(refusalsOf(files)).toEqual(['shop.yaml:3:16 value']);
    expect(shopOf(files).engine).toBeUndefined();
  });
});
