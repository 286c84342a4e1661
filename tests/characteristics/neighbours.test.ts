import { describe, expect, it } from 'vitest';
import { type Derivation, placesOf } from '../../src/characteristics/characteristic.ts';
import type { Grid } from '../../src/characteristics/grid.ts';
import { registryWith } from '../../src/characteristics/registry.ts';
import { familyOf } from '../../src/layout/family.ts';
import { shopOf } from '../shopOf.ts';
import { asWritten, gridOfRows, INCH } from './exampleGrid.ts';

const registry = registryWith([]);

function derivationOf(id: string): Derivation {
  const [found] = registry.find(id)?.derivations ?? [];
  if (found === undefined) throw new Error(id);
  return found;
}

const points = (...figures: readonly string[]): Grid =>
  gridOfRows(
    figures.map((figure) => [figure]),
    INCH,
  );

const inches = (id: string, grids: readonly Grid[]): string | undefined => {
  const found = derivationOf(id).compute(grids, {});
  return found && asWritten(found.greatest.amount, INCH, '0.0000');
};

/** Where the inputs of a figure lie, as `id position`. */
function placesIn(engine: string, id: string, family: 'cylinder' | 'crankpin'): Record<string, unknown> {
  const text = `kind: engine\nname: A\nlayout: ${engine}\n`;
  const layout = shopOf({ 'e/engine.yaml': text }).engine?.document.layout;
  if (layout === undefined) throw new Error(engine);
  return Object.fromEntries(
    layout
      .positionsOf(familyOf(family))
      .map((position) => [
        position.name,
        placesOf(derivationOf(id), registry, layout, position)?.map(
          (each) => `${each.id} ${each.position.name}`,
        ),
      ]),
  );
}

describe('the step of a liner to those beside it', () => {
  const step = (...grids: readonly Grid[]) => inches('liner_protrusion_step', grids);

  it('is the farther of the two, between means and without a sign', () => {
    expect(step(points('0.0040', '0.0044'), points('0.0050'), points('0.0035', '0.0037'))).toBe('0.0008');
    expect(step(points('0.0040'), points('0.0050'), points('0.0060'))).toBe('0.0020');
    expect(step(points('0.0040'), points('0.0030'), points('0.0020'))).toBe('0.0020');
  });

  it('leaves out a neighbour that was not read, and is none without any', () => {
    expect(step(points('0.0040'), points('~'), points('0.0035'))).toBe('0.0005');
    expect(step(points('0.0040'), points('~'))).toBeUndefined();
    expect(step(points('~'), points('0.0040'))).toBeUndefined();
    expect(step()).toBeUndefined();
  });

  it('goes along a bank and no farther', () => {
    const one = (...names: readonly string[]) => names.map((name) => `counterbore_depth ${name}`);
    expect(placesIn('{ cylinders: 3 }', 'counterbore_depth_step', 'cylinder')).toEqual({
      1: one('1', '2'),
      2: one('2', '1', '3'),
      3: one('3', '2'),
    });
    expect(placesIn('{ cylinders: 1 }', 'counterbore_depth_step', 'cylinder')).toEqual({ 1: undefined });
    const vee = '{ crankpins: { 1: [1L, 1R], 2: [2L, 2R] }, banks: { L: [1L, 2L], R: [1R, 2R] } }';
    expect(placesIn(vee, 'counterbore_depth_step', 'cylinder')).toMatchObject({
      '1L': one('1L', '2L'),
      '2R': one('2R', '1R'),
    });
  });
});

describe('the spread of a liner over its points', () => {
  it.each([
    [['0.0042', '0.0048', '0.0051', '0.0045'], '0.0009'],
    [['0.0042', '0.0042'], '0.0000'],
    [['0.0042', '~'], undefined],
    [[], undefined],
  ])('of %j is %s', (figures, expected) => {
    expect(inches('liner_protrusion_spread', [points(...figures)])).toBe(expected);
  });
});

describe('figures of what lies beside each other', () => {
  it('a crankpin takes all of its rods', () => {
    const vee = '{ crankpins: { 1: [1L, 1R] } }';
    expect(placesIn(vee, 'rod_side_clearance', 'crankpin')).toEqual({
      1: ['crankpin_width 1', 'rod_big_end_width 1L', 'rod_big_end_width 1R'],
    });
    expect(placesIn('{ crankpins: 2 }', 'rod_side_clearance', 'crankpin')).toEqual({
      1: undefined,
      2: undefined,
    });
    const widths = [points('2.0020'), points('0.9940', '0.9950'), points('0.9960')];
    const found = derivationOf('rod_side_clearance').compute(widths, {});
    const figures = found && [found.least, found.mean, found.greatest];
    expect(figures?.map(({ amount }) => asWritten(amount, INCH, '0.00000'))).toEqual([
      '0.01100',
      '0.01150',
      '0.01200',
    ]);
  });

  it('a crown stands as high as half of the stroke, the rod and the piston, less the deck', () => {
    const stack = (...figures: readonly string[]) =>
      inches(
        'piston_protrusion',
        derivationOf('piston_protrusion').inputs.map((_, index) => points(figures[index] ?? '~')),
      );
    expect(derivationOf('piston_protrusion').inputs).toHaveLength(4);
    expect(stack('5', '9', '2', '13.4900')).toBe('0.0100');
  });
});
