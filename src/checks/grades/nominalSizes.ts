import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import { add, equals, type Fraction, ZERO } from '../../quantity/fraction.ts';
import { isAnySizeStated, type Moment } from './gradeInForce.ts';
import { fittedSize } from './madeSize.ts';

/** All nominal sizes of an engine, of the parts that are fitted at a position. */
export const nominalSizes = (
  engine: Engine,
  moment: Moment,
  registry: Registry,
  at: Position,
): ReadonlyMap<string, Fraction> =>
  isAnySizeStated(engine, moment)
    ? new Map(
        [...engine.sizes].map(([name, standard]) => [
          name,
          nominalSize(engine, moment, registry, name, at) ?? standard,
        ]),
      )
    : engine.sizes;

/** The nominal size of the part that is fitted at a position, in the base unit. */
export function nominalSize(
  engine: Engine,
  moment: Moment,
  registry: Registry,
  name: string,
  at: Position,
): Fraction | undefined {
  const standard = engine.sizes.get(name);
  const sized = registry.find(name) ?? registry.all.find(({ nominal }) => nominal === name);
  if (standard === undefined || sized?.dimension === undefined) return standard;
  return add(standard, moveOf(engine, moment, sized, at));
}

/** Nought where it is to speak of several parts that were made to several sizes. */
function moveOf(engine: Engine, moment: Moment, sized: Characteristic, at: Position): Fraction {
  const positions = relate(engine.document.layout, at, sized.family) ?? [];
  const moves = positions.map((position) => fittedSize(engine, moment, sized, position).by);
  const [first = ZERO] = moves;
  return moves.every((by) => equals(by, first)) ? first : ZERO;
}
