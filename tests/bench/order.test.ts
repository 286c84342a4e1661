import { describe, expect, it } from 'vitest';
import { inBenchOrder } from '../../src/bench/order.ts';
import { planSession } from '../../src/bench/plan.ts';
import { registryWith } from '../../src/characteristics/registry.ts';
import type { Stage } from '../../src/documents/session/stage.ts';
import { limitsOf, shopOf } from '../shopOf.ts';

const { all } = registryWith([]);
const orderAt = (stage: Stage) => inBenchOrder(all, stage).map(({ id }) => id);
const placeIn = (order: readonly string[], id: string): number => {
  const at = order.indexOf(id);
  if (at < 0) throw new Error(`${id} is not in the order`);
  return at;
};

describe('the order of the bench', () => {
  it.each(['teardown', 'machined', 'trial', 'rebuild', 'service'] as const)(
    'at %s loses nothing',
    (stage) => {
      expect(orderAt(stage).toSorted()).toEqual(all.map(({ id }) => id).toSorted());
    },
  );

  it.each(all.filter(({ derivations }) => derivations.length > 0).map((each) => [each.id, each] as const))(
    'at a trial has the parts of %s before it',
    (id, { derivations }) => {
      const order = orderAt('trial');
      for (const input of derivations.flatMap(({ inputs }) => inputs))
        expect(placeIn(order, input), input).toBeLessThan(placeIn(order, id));
    },
  );

  it('has first at a teardown what the assembled engine alone can tell', () => {
    const order = inBenchOrder(all, 'teardown');
    const firstPart = order.findIndex(({ isAssemblyFigure }) => isAssemblyFigure !== true);
    expect(order.slice(firstPart).some(({ isAssemblyFigure }) => isAssemblyFigure === true)).toBe(false);
    const ids = order.map(({ id }) => id);
    const asTakenApart = [
      'compression_pressure',
      'piston_protrusion',
      'crankshaft_end_play',
      'rod_side_clearance',
      'main_bearing_clearance',
      'rod_bearing_clearance',
      'main_journal_diameter',
    ];
    expect(asTakenApart.toSorted((a, b) => placeIn(ids, a) - placeIn(ids, b))).toEqual(asTakenApart);
  });

  it('goes together at a rebuild: block, mains, rods and pistons, head, and what runs last', () => {
    const order = orderAt('rebuild');
    const asAssembled = [
      'deck_flatness',
      'liner_protrusion',
      'main_journal_diameter',
      'crankshaft_end_play',
      'rod_bearing_clearance',
      'piston_clearance',
      'ring_end_gap',
      'piston_protrusion',
      'head_flatness',
      'compression_ratio',
      'compression_pressure',
    ];
    expect(asAssembled.toSorted((a, b) => placeIn(order, a) - placeIn(order, b))).toEqual(asAssembled);
  });
});

/** What a trial asks for with these limits: each with its rows and columns. */
function asked(limits: string): readonly string[] {
  const { engine, registry } = shopOf({
    'e/engine.yaml':
      'kind: engine\nname: A\nunits: { length: in, volume: cc }\nlayout: { cylinders: 2, crankpins: 2, mains: 3 }\n',
    'e/limits.yaml': limitsOf(limits),
  });
  if (engine === undefined) throw new Error('the documents are not sound');
  return planSession(engine, registry, { stage: 'trial' }).blocks.map(({ measure, grid }) =>
    [measure, ...grid.stations, ...grid.directions].join(' '),
  );
}

describe('a limit on what no instrument shows asks for what it is worked out from', () => {
  it.each([
    [
      'compression_ratio: { new: 9 to 9.5 }',
      [
        'cylinder_bore',
        'piston_protrusion',
        'chamber_volume',
        'piston_crown_volume',
        'head_gasket_opening',
        'head_gasket_thickness',
      ],
    ],
    ['displacement: { new: { max: 6 L } }', ['cylinder_bore']],
    ['small_end_bush_fit: { new: -0.003 to -0.002 }', ['small_end_housing_bore', 'small_end_bush_diameter']],
    ['deck_flatness_across: { wear: { max: 0.003 } }', ['deck_flatness first second along across diagonal']],
    ['liner_protrusion_step: { new: { max: 0.002 } }', ['liner_protrusion front rear left right']],
    ['deck_parallelism: { new: { max: 0.002 } }', ['deck_height front rear']],
    ['piston_protrusion: { new: 0.002 to 0.006 }', ['piston_protrusion']],
  ])('%s', (limits, expected) => expect(asked(limits).toSorted()).toEqual(expected.toSorted()));
});
