import { isGap } from '../../characteristics/belowZero.ts';
import { type Characteristic, placesOf } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { BAND_NAMES } from '../../documents/limits/bands.ts';
import type { Position } from '../../layout/position.ts';
import type { SessionView } from '../judge/row.ts';
import type { Bands } from '../judge/sideLimit.ts';
import { oncePer } from '../once.ts';

/** The limits of a press fit carry below zero; where there are none, parts that may be pressed together are. */
export function allowsBelowZero({ mayBePressed }: Characteristic, bands: Bands): boolean {
  const sides = BAND_NAMES.flatMap((name) => [bands[name]?.min ?? [], bands[name]?.max ?? []].flat());
  return sides.length === 0 ? mayBePressed === true : sides.some(({ amount }) => amount.n < 0n);
}

/** Two sizes of which one has to be smaller: a journal and its bore, a piston and its cylinder. */
export interface Fit {
  readonly clearance: Characteristic;
  readonly outer: Characteristic;
  readonly inner: Characteristic;
}

export const fitsOf = oncePer((registry: Registry): readonly Fit[] =>
  registry.all.filter(isGap).flatMap((clearance) =>
    clearance.derivations.flatMap(({ inputs }) => {
      const [outer, inner] = inputs.map((id) => registry.find(id));
      const areTwo = inputs.length === 2 && outer?.figure === 'size' && inner?.figure === 'size';
      return areTwo ? [{ clearance, outer, inner }] : [];
    }),
  ),
);

/** Where the two sizes of a fit lie for a position of its clearance. */
export function placesOfFit(
  { clearance, outer, inner }: Fit,
  position: Position,
  { engine, registry }: SessionView,
): { readonly outer: Position; readonly inner: Position } | undefined {
  const derivation = clearance.derivations.find(
    ({ inputs }) => inputs.length === 2 && inputs[0] === outer.id && inputs[1] === inner.id,
  );
  const places = derivation && placesOf(derivation, registry, engine.document.layout, position);
  const [first, second] = places ?? [];
  return first && second && { outer: first.position, inner: second.position };
}
