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

type Steps = readonly (readonly [step: string, ids: RegExp])[];

const RUNNING =
  /^(oil_pressure_\w+|relief_opening_pressure|crankcase_pressure|ignition_timing|valve_lash_hot)$/;
const CLOSED = /^(compression_(pressure|share)|leak_down\w*)$/;
const VALVES_MOVED =
  /^(lifter_lift|valve_lift|rocker_ratio|(intake|exhaust)_\w+|lobe_separation|valve_overlap|valve_to_piston_clearance)$/;
const ENDS_OF_CRANKSHAFT = /^(flywheel_|damper_)/;
const TIMING_DRIVE = /^(timing_chain_slack|gear_backlash|gear_end_play|camshaft_end_play)$/;

/** As an engine is opened: each figure before what it needs is taken off. */
const AS_OPENED: Steps = [
  ['running and hot', RUNNING],
  ['injection pump', /^injection_timing$/],
  ['cylinders closed', CLOSED],
  ['lash', /^valve_lash_cold$/],
  ['rocker cover off', VALVES_MOVED],
  ['flywheel and damper on', ENDS_OF_CRANKSHAFT],
  ['crankshaft in, flywheel off', /^crankshaft_((flange|pilot)_runout|end_play)$|^turning_torque$/],
  ['timing cover off', TIMING_DRIVE],
  ['head off', /^(piston_protrusion|deck_clearance|piston_travel)$|^liner_protrusion/],
  [
    'valves in the head',
    /^(valve_seat_leak_test|valve_recession|valve_spring_installed_height|retainer_to_seal_clearance|valve_rock|valve_stem_clearance|lifter_clearance|rocker_clearance)$/,
  ],
  ['sump off', /^rod_side_clearance$/],
  ['pump cover off', /^pump_(body|end|tip)_clearance$|^pump_gear_backlash$/],
  ['rod caps off', /^rod_bearing_clearance$/],
  ['pistons out', /^(piston|ring_side|piston_pin|small_end)_clearance$/],
  ['main caps off', /^main_bearing_clearance$/],
  ['shafts', /^(cam_bearing|pump_shaft|relief_plunger)_clearance$/],
];

/** As it goes together: what is measured of parts, what they make, how it is closed up and started. */
const AS_ASSEMBLED: Steps = [
  ['tests of parts', /^(?!valve_seat)\w+_(crack|pressure|hardness|square)_test$/],
  ['block', /^(deck_(flatness\w*|roughness|height|parallelism)|main_bore_alignment|cylinder_centre_offset)$/],
  ['liners', /^(liner|counterbore|spacer|block_(upper_belt|lower_belt|flange))_(?!crack|pressure)/],
  [
    'crankshaft, its journals finished',
    /^(main_journal|crankpin)_(fillet_radius|roughness|hardness)$|^crank_throw$/,
  ],
  ['weights', /_weight(_spread)?$|^(oil_allowance|balance_factor|bobweight)$/],
  [
    'mains',
    /^main_(journal|housing|shell|bearing)_(diameter|bore|thickness|taper|out_of_round|clearance|crush|free_\w+)$/,
  ],
  ['crankshaft in', /^thrust_|^crankshaft_(end_play|runout|flange_runout|pilot_runout)$|^turning_torque$/],
  [
    'rods on their pins',
    /^(rod_(housing|shell|bearing)|crankpin)_(diameter|bore|thickness|taper|out_of_round|clearance|crush|free_\w+|width)$|^rod_(side_clearance|centre_distance|b\w+_(height|offset|width)|bend|twist)$/,
  ],
  ['pins', /^(piston_pin|small_end)_(?!weight|crack)\w+(?<!_weight|_weight_spread)$/],
  ['cylinders and rings', /^(cylinder|piston)_(bore|diameter|taper|out_of_round|clearance)$|^ring_(?!set)/],
  ['pistons in', /^piston_(compression_height|protrusion|travel)$|^crank_stroke$|^deck_clearance$/],
  ['oil pump', /^pump_|^relief_(plunger|valve|spring)_/],
  ['head', /^head_(flatness\w*|roughness|thickness)$/],
  [
    'valves, lifters, rockers and camshaft',
    /^(inner_)?valve_(stem|guide|rock|margin|face|seat|interference|recession|spring)(?!_leak)\w*(?<!_test)$|^retainer_|^(lifter|rocker|pushrod)_(?!lift$|ratio)|^cam_|^camshaft_runout$|^lobe_(height|base_circle|lift)$|^gear_(bore|out_of_round|taper|shaft_\w+|fit)$|^timing_chain_length$/,
  ],
  ['valves tight', /^valve_seat_leak_test$/],
  ['volumes', /_volume$|^head_gasket_|^displacement$|^compression_ratio$/],
  ['timing cover', TIMING_DRIVE],
  ['valves moved', new RegExp(`${VALVES_MOVED.source}|^coil_bind_margin$`)],
  ['flywheel and damper on', ENDS_OF_CRANKSHAFT],
  ['lash', /^valve_lash_cold$/],
  ['injection pump', /^injection_timing$/],
  ['cylinders closed', CLOSED],
  ['running and hot', RUNNING],
];

/** Its parts as they come off, the top first: the steps of the assembly in another order. */
const AS_THEY_COME_OFF = [
  'tests of parts',
  'head',
  'valves, lifters, rockers and camshaft',
  // The coil bind margin, worked out from the lift that was read as the engine was opened.
  'valves moved',
  'cylinders and rings',
  'pistons in',
  'pins',
  'rods on their pins',
  'liners',
  'oil pump',
  'mains',
  'crankshaft in',
  'crankshaft, its journals finished',
  // The stroke, worked out from the throws.
  'pistons in',
  'weights',
  'block',
  'volumes',
];

/** The steps as they come; a step that comes twice is there twice. */
function stepsOf(order: readonly string[], steps: Steps): readonly string[] {
  const taken = order.map((id) => steps.find(([, ids]) => ids.test(id))?.[0] ?? 'parts');
  return taken.filter((step, at) => step !== taken[at - 1]);
}

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

  it.each(all.map(({ id }) => id))('has one step of the assembly for %s', (id) => {
    expect(AS_ASSEMBLED.filter(([, ids]) => ids.test(id)).map(([step]) => step)).toHaveLength(1);
  });

  it.each(['trial', 'machined', 'rebuild'] as const)('at %s goes from step to step', (stage) => {
    expect(stepsOf(orderAt(stage), AS_ASSEMBLED)).toEqual(AS_ASSEMBLED.map(([step]) => step));
  });

  it.each(['teardown', 'service'] as const)('at %s goes from the running engine to its parts', (stage) => {
    expect(stepsOf(orderAt(stage), AS_OPENED)).toEqual([...AS_OPENED.map(([step]) => step), 'parts']);
  });

  it.each(all.filter(({ isAssemblyFigure }) => isAssemblyFigure).map(({ id }) => id))(
    'at a teardown takes %s before its parts are taken apart',
    (id) => {
      const isOpened = AS_OPENED.some(([, ids]) => ids.test(id));
      expect(isOpened).toBe(!/_volume$|^compression_ratio$/.test(id));
    },
  );

  it.each(['teardown', 'service'] as const)(
    'at %s measures parts as they come off, the top first',
    (stage) => {
      const isPart = (id: string): boolean => !AS_OPENED.some(([, ids]) => ids.test(id));
      expect(stepsOf(orderAt(stage).filter(isPart), AS_ASSEMBLED)).toEqual(AS_THEY_COME_OFF);
    },
  );

  it.each([
    ['the whole engine before the head is off', 'crankshaft_end_play', 'turning_torque', 'piston_protrusion'],
    [
      'the rods before the main caps',
      'rod_side_clearance',
      'rod_bearing_clearance',
      'main_bearing_clearance',
    ],
    ['the head before what is below it', 'head_flatness', 'cylinder_bore', 'rod_bearing_bore'],
    [
      'the rods and their pins before the mains',
      'crankpin_diameter',
      'rod_bearing_bore',
      'main_journal_diameter',
    ],
  ])('at a teardown has %s', (_, ...asTakenApart) => {
    const order = orderAt('teardown');
    expect(asTakenApart.toSorted((a, b) => placeIn(order, a) - placeIn(order, b))).toEqual(asTakenApart);
  });

  it('at a teardown has the parts of what is worked out before it, but for what the engine shows as it is opened', () => {
    const order = orderAt('teardown');
    const isPart = (id: string): boolean => !AS_OPENED.some(([, ids]) => ids.test(id));
    for (const { id, derivations } of all.filter((each) => isPart(each.id)))
      for (const input of derivations.flatMap(({ inputs }) => inputs))
        expect(placeIn(order, input), `${input} of ${id}`).toBeLessThan(placeIn(order, id));
  });

  it('has what a shop adds among the parts, before the engine is closed up', () => {
    const { registry } = shopOf({
      'e/engine.yaml': 'kind: engine\nname: A\nlayout: { cylinders: 2, crankpins: 2, mains: 3 }\n',
      'e/limits.yaml':
        'kind: limits\nname: B\nsource: C\ncharacteristics: { bracket_height: { quantity: length } }\n',
    });
    const order = inBenchOrder(registry?.all ?? [], 'rebuild').map(({ id }) => id);
    expect(placeIn(order, 'compression_ratio')).toBeLessThan(placeIn(order, 'bracket_height'));
    expect(placeIn(order, 'bracket_height')).toBeLessThan(placeIn(order, 'timing_chain_slack'));
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
