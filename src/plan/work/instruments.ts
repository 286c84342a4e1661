import { type Characteristic, placesOf } from '../../characteristics/characteristic.ts';
import { limitsOfFitted } from '../../checks/grades/madeSize.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Judgement } from '../../checks/judge/verdict.ts';
import type { Route } from '../../checks/value/route.ts';
import type { Engine } from '../../documents/assemble.ts';
import { instrumentOn } from '../../documents/engine/instrumentOn.ts';
import type { Position } from '../../layout/position.ts';
import { conformanceProbability, expandedFactor } from '../../measurement/conformance.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { readingTerms } from '../../measurement/readingTerms.ts';
import { compare, type Fraction, toNumber } from '../../quantity/fraction.ts';
import type { PlanContext } from './context.ts';

/** Instruments with which a value would be decided, and how well it would then be known. */
export interface Decider {
  readonly instruments: readonly string[];
  /** Expanded uncertainty, in the base unit. */
  readonly expanded: number;
}

/** The best that the register has for what is undecided; undefined where that cannot decide it either. */
export function deciderOf(row: Row, context: PlanContext): Decider | undefined {
  const [judged] = row.routes;
  if (judged === undefined || judged.spans !== undefined) return undefined;
  const ways = waysTo(row, judged.route, context).flatMap((places) => bestOf(places, context) ?? []);
  const [best] = ways.sort((a, b) => a.u - b.u);
  const [least, greatest] = [toNumber(judged.least), toNumber(judged.greatest)];
  if (best === undefined || !isDecided({ least, greatest, u: best.u }, row.judgement)) return undefined;
  return {
    instruments: [...new Set(best.names)],
    expanded: best.u * expandedFactor(Number.POSITIVE_INFINITY),
  };
}

/** The best of the register to read once more what is in doubt: by about how large it is, for the figure may be wrong. */
export function instrumentsAgain(row: Row, context: PlanContext): readonly string[] {
  const [judged] = row.routes;
  if (judged === undefined) return [];
  const { characteristic, position } = row;
  const { measured, readIn, inputs } = judged.route;
  const amount = sizeFor(characteristic, position, context.engine) ?? measured.mean.amount;
  const readings =
    inputs.length === 0 ? [{ characteristic, amount, day: readIn.date }] : readingsBehind(judged.route);
  return [...new Set(bestOf(readings, context)?.names)];
}

/** A finer way to a value than the one that was taken. */
export interface FinerInstruments extends Decider {
  /** Standard uncertainty, in the base unit. */
  readonly u: number;
  /** Of a value that reads the same whether it would be proven inside or out. */
  readonly decides: boolean;
}

/** What the register has that is finer than what was used: the next better, and the first that would decide. */
export function finerInstruments(row: Row, context: PlanContext): readonly FinerInstruments[] {
  const [judged] = row.routes;
  if (judged === undefined || judged.spans !== undefined) return [];
  const [least, greatest] = [toNumber(judged.least), toNumber(judged.greatest)];
  const finer = waysTo(row, judged.route, context)
    .flatMap((readings) => {
      const [only, ...more] = readings;
      if (only !== undefined && more.length === 0) return ratedFor(only, context);
      return bestOf(readings, context) ?? [];
    })
    .filter(({ u }) => u < judged.route.u * (1 - LIKE))
    .sort((a, b) => b.u - a.u)
    .map(({ names, u }) => ({
      instruments: [...new Set(names)],
      u,
      expanded: u * expandedFactor(Number.POSITIVE_INFINITY),
      decides: isDecided({ least, greatest, u }, row.judgement),
    }));
  return finer.filter((each, index) => index === 0 || each === finer.find(({ decides }) => decides));
}

/** A twentieth finer is no better. */
const LIKE = 0.05;

/** One size that has to be read, about how large, and the day on which the instrument must not be overdue. */
interface Reading {
  readonly characteristic: Characteristic;
  readonly amount: Fraction;
  readonly day: string;
}

/** As it was read, and by each other way in which it could be worked out of sizes whose range is known. */
function waysTo(row: Row, route: Route, context: PlanContext): readonly (readonly Reading[])[] {
  const { engine, registry, state } = context;
  const day = route.readIn.date;
  const derived = row.characteristic.derivations.map((derivation) => {
    const places = placesOf(derivation, registry, engine.document.layout, row.position) ?? [];
    const readings = places.flatMap(({ id, position }): readonly Reading[] => {
      const characteristic = registry.find(id);
      const read = state.rows.find(
        (each) => each.characteristic === characteristic && each.position === position,
      );
      const amount = read?.routes[0]?.mean ?? (characteristic && sizeFor(characteristic, position, engine));
      return characteristic === undefined || amount === undefined ? [] : [{ characteristic, amount, day }];
    });
    return readings.length < derivation.inputs.length ? [] : readings;
  });
  return [readingsBehind(route), ...derived].filter((each) => each.length > 0);
}

/** About how large it is: as drawn, or by any limit on it. */
function sizeFor(of: Characteristic, position: Position, engine: Engine): Fraction | undefined {
  const drawn = engine.sizes.get(of.nominal ?? of.id);
  const { bands } = limitsOfFitted(engine, undefined, of, position);
  const limits = Object.values(bands).flatMap(({ min, max }) => [min, max]);
  return drawn ?? limits.flatMap((limit) => (limit?.kind === 'amount' ? [limit.amount] : []))[0];
}

const readingsBehind = (route: Route): readonly Reading[] =>
  route.inputs.length === 0
    ? [
        {
          characteristic: route.characteristic,
          amount: route.measured.mean.amount,
          day: route.readIn.date,
        },
      ]
    : route.inputs.flatMap(readingsBehind);

/** Each size by the best for it; what two readings share is counted twice, which is the cautious way. */
function bestOf(readings: readonly Reading[], context: PlanContext): Best | undefined {
  const chosen = readings.flatMap((reading) => bestFor(reading, context) ?? []);
  if (chosen.length < readings.length) return undefined;
  return { names: chosen.flatMap(({ names }) => names), u: Math.hypot(...chosen.map(({ u }) => u)) };
}

/** Proven inside, or out: as far as a value may be trusted that comes out the same. */
function isDecided(
  value: { least: number; greatest: number; u: number },
  { deciding: { min, max } }: Judgement,
): boolean {
  const probability = conformanceProbability({
    ...value,
    dof: Number.POSITIVE_INFINITY,
    ...(min === undefined ? {} : { min: toNumber(min.amount) }),
    ...(max === undefined ? {} : { max: toNumber(max.amount) }),
  });
  return probability >= 0.95 || probability <= 0.05;
}

interface Best {
  readonly names: readonly string[];
  readonly u: number;
}

const bestFor = (reading: Reading, context: PlanContext): Best | undefined => ratedFor(reading, context)[0];

/** Of the usual type, in range and not overdue, the best first; a bore gauge together with the micrometer that sets it. */
function ratedFor({ characteristic, amount, day }: Reading, context: PlanContext): readonly Best[] {
  const usable = [...context.engine.instruments.values()]
    .flatMap((each) => instrumentOn(each, day) ?? [])
    .filter((each) => isUsable(each, amount, day));
  const all = usable.filter(({ type }) => type === characteristic.usual);
  const setters = usable.filter(({ type }) => type === 'micrometer');
  const pairs = all.flatMap((gauge) =>
    gauge.type === 'bore gauge' && setters.length > 0
      ? setters.map((setter) => rated(gauge, amount, setter))
      : [rated(gauge, amount)],
  );
  return pairs.sort((a, b) => a.u - b.u);
}

const isUsable = ({ range, due }: Instrument, amount: Fraction, day: string): boolean =>
  (due === undefined || due >= day) &&
  (range === undefined || (compare(range.from, amount) <= 0 && compare(amount, range.to) <= 0));

function rated(gauge: Instrument, amount: Fraction, setter?: Instrument): Best {
  const terms = readingTerms(gauge, { amount, id: 'once more' }, setter);
  return {
    names: [gauge.id, ...(setter === undefined ? [] : [setter.id])],
    u: Math.hypot(...[...terms.values()].map(({ u }) => u)),
  };
}
