import fc from 'fast-check';
import type { Axis } from '../../src/layout/axis.ts';
import { Layout, type LayoutNames } from '../../src/layout/layout.ts';

const counted = (count: number): string[] => Array.from({ length: count }, (_, index) => String(index + 1));

export interface Drawn {
  readonly cylinders: readonly string[];
  /** By crankpin the cylinders on it. */
  readonly pins: ReadonlyMap<string, readonly string[]>;
  readonly rings: readonly string[];
  readonly valves: readonly string[];
}

export const givenOf = ({ cylinders, pins, rings, valves }: Drawn): Partial<LayoutNames> => ({
  names: new Map<Axis, readonly string[]>([
    ['cylinder', cylinders],
    ['crankpin', [...pins.keys()]],
    ['main', counted(pins.size + 1)],
    ['ring', rings],
    ['bank', ['left', 'right']],
  ]),
  onHolder: new Map([['valve', new Map(cylinders.map((cylinder) => [cylinder, valves]))]]),
  ofCylinder: new Map([
    ['crankpin', new Map([...pins].flatMap(([pin, on]) => on.map((cylinder) => [cylinder, pin] as const)))],
    ['bank', new Map(cylinders.map((each, index) => [each, index % 2 === 0 ? 'left' : 'right']))],
  ]),
});

export const layoutOf = (drawn: Drawn): Layout => new Layout(givenOf(drawn));

/** In line, vees and three rods a pin: 1 to 12 cylinders of two to five valves. */
export const drawnLayout: fc.Arbitrary<Drawn> = fc
  .record({ pins: fc.integer({ min: 1, max: 12 }), rods: fc.integer({ min: 1, max: 3 }) })
  .filter(({ pins, rods }) => pins * rods <= 12)
  .chain(({ pins, rods }) =>
    fc.record({
      pins: fc.constant(pins),
      rods: fc.constant(rods),
      /** A cylinder need not run on the pin of its own number. */
      shift: fc.integer({ min: 0, max: pins - 1 }),
      names: fc.constantFrom<'numbers' | 'codes'>('numbers', 'codes'),
      valves: fc.constantFrom(
        ['I', 'E'],
        ['I', 'E1', 'E2'],
        ['I1', 'I2', 'E1', 'E2'],
        ['1', '2', '3', '4', '5'],
      ),
      rings: fc.constantFrom(['top', 'second', 'oil'], ['1', '2', '3', '4'], ['top', 'oil']),
    }),
  )
  .map(({ pins, rods, shift, names, valves, rings }) => {
    const cylinders = counted(pins * rods).map((name) => (names === 'numbers' ? name : `${name}L`));
    const onPin = (pin: number) => cylinders.filter((_, index) => (index + shift) % pins === pin);
    return {
      cylinders,
      pins: new Map(counted(pins).map((name, index) => [name, onPin(index)])),
      rings,
      valves,
    };
  });
