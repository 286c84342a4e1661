import { expect, it } from 'vitest';
import { sharedPin } from '../../../src/checks/judge/sharedPin.ts';
import { shopFiles } from '../../shopOf.ts';
import { characteristicIn, positionIn, viewIn } from '../viewIn.ts';

const engine = (crankpins: string): string =>
  `kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 4, mains: 3, ${crankpins} }\n`;
const VEE = engine('crankpins: 2, pins: { 1: [1, 3], 2: [2, 4] }');

function pinOf(layout: string, id: string, at = '3'): unknown {
  const view = viewIn(
    shopFiles(
      'piston_clearance: { new: { max: 1 } }',
      '- { measure: cylinder_bore, at: { 1: 4 } }',
      'rebuild',
      {
        'e/engine.yaml': layout,
      },
    ),
  );
  const characteristic = characteristicIn(view, id);
  const found = sharedPin(
    characteristic,
    positionIn(view, characteristic, at),
    view.registry,
    view.engine.document.layout,
  );
  return found && { pin: found.pin.name, rods: found.rods.map(({ name }) => name) };
}

it.each([
  ['rod_bearing_clearance', '3', { pin: '1', rods: ['1', '3'] }],
  ['rod_big_end_width', '2', { pin: '2', rods: ['2', '4'] }],
])('of a vee %s of rod %s runs on its crankpin with another', (id, at, expected) => {
  expect(pinOf(VEE, id, at)).toEqual(expected);
});

it.each([
  ['a rod with a crankpin to itself', engine('crankpins: 4'), 'rod_bearing_clearance', '3'],
  ['a part that runs on nothing', VEE, 'cylinder_bore', '3'],
  ['the crankpin itself', VEE, 'crankpin_diameter', '2'],
])('%s shares none', (_, layout, id, at) => {
  expect(pinOf(layout, id, at)).toBeUndefined();
});
