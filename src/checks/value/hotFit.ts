import { type Characteristic, placesOf } from '../../characteristics/characteristic.ts';
import { type Grid, gridOfOne, type Measured } from '../../characteristics/grid.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { heatOf } from '../../documents/engine/running/heat.ts';
import { grown, type StatedTemperature } from '../../measurement/temperature.ts';
import { subtractValues, type Value } from '../../measurement/value.ts';
import { expandingPart } from './blockWarmth.ts';
import type { Route } from './route.ts';

/** How much more a fit is where its parts are as warm as in a running engine: by their expansion alone. */
export interface HotFit {
  readonly more: Value;
  /** The parts whose sizes it comes from, each with its temperature: `block 90 degC`. */
  readonly at: readonly string[];
}

interface Heat {
  readonly engine: Engine;
  readonly registry: Registry;
}

/** By the first of the ways to a fit, at 20 °C, of which every part has a known expansion and temperature. */
export function hotFit(
  { figure }: Characteristic,
  routes: () => readonly Route[],
  heat: Heat,
): HotFit | undefined {
  if (figure !== 'clearance' || heat.engine.document.running === undefined) return undefined;
  for (const route of routes()) {
    const at = new Set<string>();
    const hot = route.inputs.length === 0 ? undefined : workedOutHot(route, heat, at);
    if (hot !== undefined) return { more: subtractValues(hot.mean, route.measured.mean), at: [...at] };
  }
  return undefined;
}

function workedOutHot(
  { name, characteristic, position, inputs }: Route,
  heat: Heat,
  at: Set<string>,
): Measured | undefined {
  const derivation = characteristic.derivations.find(({ route }) => route === name);
  const { layout } = heat.engine.document;
  const places = derivation && placesOf(derivation, heat.registry, layout, position);
  const grids = inputs.flatMap((input) => hotGrid(input, heat, at) ?? []);
  return grids.length < inputs.length ? undefined : derivation?.compute(grids, {}, places);
}

function hotGrid(input: Route, heat: Heat, at: Set<string>): Grid | undefined {
  if (input.inputs.length > 0) {
    const hot = workedOutHot(input, heat, at);
    return hot && gridOfOne(hot.mean);
  }
  const part = expandingPart(input.characteristic, heat.engine, heat.registry);
  const warm = part && heatIn(heat, part.key);
  if (part === undefined || warm === undefined) return undefined;
  at.add(`${part.key} ${warm.text}`);
  const rows = input.grid.rows.map((row) => row.map((value) => value && grown(value, part, warm)));
  return { ...input.grid, rows };
}

const heatIn = ({ engine: { document } }: Heat, key: string): StatedTemperature | undefined =>
  document.running && heatOf(document.running, key);
