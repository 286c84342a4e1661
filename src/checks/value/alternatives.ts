import {
  type Characteristic,
  type Derivation,
  type InputPlace,
  placesOf,
} from '../../characteristics/characteristic.ts';
import { gridOfOne, type Measured } from '../../characteristics/grid.ts';
import { instrumentOn } from '../../documents/engine/instrumentOn.ts';
import type { Position } from '../../layout/position.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { readingTerms } from '../../measurement/readingTerms.ts';
import { standardUncertainty, type Value } from '../../measurement/value.ts';
import { compare, type Fraction } from '../../quantity/fraction.ts';
import type { SessionView } from '../judge/row.ts';
import type { Route } from './route.ts';
import { uncertaintyOf } from './routes.ts';

/** A way to measure something with registered instruments, and what uncertainty it would have. */
export interface Alternative {
  /** `bore-2-6 set with mic-3-4, and mic-3-4`. */
  readonly instruments: string;
  readonly u: number;
}

/** Every way in which the register could measure a characteristic at a position, the finest first. */
export function alternatives(
  characteristic: Characteristic,
  position: Position,
  judged: Route,
  view: SessionView,
): readonly Alternative[] {
  const direct = suitable(characteristic, judged.measured.mean.amount, view).map((instrument) => ({
    instruments: directly(instrument, judged),
    u: standardUncertainty(readingWith(instrument, judged.measured.mean.amount, characteristic.id)),
  }));
  const derived = characteristic.derivations.flatMap(
    (derivation) => byDerivation(derivation, characteristic, position, view) ?? [],
  );
  return [...direct, ...derived].sort((a, b) => a.u - b.u);
}

/** A strip that was read as a range, such as `under 0.004`, is told how it would do better. */
const directly = ({ id, marks }: Instrument, judged: Route): string =>
  marks !== undefined && judged.inputs.length === 0 && judged.with.includes(id)
    ? `${id} read at one of its marks`
    : id;

/** Instruments of the type that the characteristic is usually measured with, whose range holds the amount. */
const suitable = (
  { usual }: Characteristic,
  amount: Fraction,
  { engine, session }: SessionView,
): readonly Instrument[] =>
  [...engine.instruments.values()]
    .flatMap((each) => instrumentOn(each, session.date) ?? [])
    .filter(
      ({ type, range }) =>
        type === usual &&
        (range === undefined || (compare(amount, range.from) >= 0 && compare(amount, range.to) <= 0)),
    );

const readingWith = (instrument: Instrument, amount: Fraction, id: string, setter?: Instrument): Value => ({
  amount,
  terms: readingTerms(instrument, { amount, id }, setter),
});

interface Chosen {
  readonly instrument: Instrument;
  readonly setter: Instrument | undefined;
  readonly value: Value;
}

/** Each input with its finest instrument; a bore gauge set with the micrometer that measures the shaft. */
function byDerivation(
  derivation: Derivation,
  of: Characteristic,
  position: Position,
  view: SessionView,
): Alternative | undefined {
  const chosen: Chosen[] = [];
  const places = placesOf(derivation, view.registry, view.engine.document.layout, position) ?? [];
  if (places.length === 0) return undefined;
  for (const place of places.toReversed()) {
    const one = choose(place, of, chosen[0]?.instrument, view);
    if (one === undefined) return undefined;
    chosen.unshift(one);
  }
  const measured = computed(derivation, chosen, places);
  if (measured === undefined) return undefined;
  const names = chosen.map(({ instrument, setter }) =>
    setter === undefined ? instrument.id : `${instrument.id} set with ${setter.id}`,
  );
  return { instruments: [...new Set(names)].join(' and '), u: uncertaintyOf(measured).u };
}

const computed = (
  derivation: Derivation,
  chosen: readonly Chosen[],
  places: readonly InputPlace[],
): Measured | undefined =>
  derivation.compute(
    chosen.map(({ value }) => gridOfOne(value)),
    {},
    places,
  );

function choose(
  { id, position }: InputPlace,
  of: Characteristic,
  shaftGauge: Instrument | undefined,
  view: SessionView,
): Chosen | undefined {
  const input = view.registry.find(id);
  const amount = input && usualAmount(input, of, position, view);
  if (input === undefined || amount === undefined) return undefined;
  const setter = input.usual === 'bore gauge' ? shaftGauge : undefined;
  const values = suitable(input, amount, view).map((instrument) => ({
    instrument,
    setter,
    value: readingWith(instrument, amount, `${id} ${position.key}`, setter),
  }));
  return values.sort((a, b) => standardUncertainty(a.value) - standardUncertainty(b.value))[0];
}

/** What was read of it there, else its nominal size, else that of the shaft or bore that it goes with. */
function usualAmount(
  input: Characteristic,
  of: Characteristic,
  position: Position,
  { engine, registry, routes }: SessionView,
): Fraction | undefined {
  const read = routes.at(input, position, {})[0]?.measured.mean.amount;
  if (read !== undefined) return read;
  const partners = of.derivations.flatMap((each) => (each.inputs.includes(input.id) ? each.inputs : []));
  const sized = [input.id, ...(isWall(input) ? [] : partners)];
  return sized
    .filter((id) => !isWall(registry.find(id)) || id === input.id)
    .flatMap((id) => engine.sizes.get(id) ?? [])[0];
}

const isWall = (of: Characteristic | undefined): boolean => of?.dimension === 'shell wall';
