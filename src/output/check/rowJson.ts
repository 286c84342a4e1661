import { printingOf } from '../../checks/findings/readings.ts';
import { leftToCut } from '../../checks/grades/cutDown.ts';
import type { JudgedRoute, Row } from '../../checks/judge/row.ts';
import type { SidedLimits, SideLimit } from '../../checks/judge/sideLimit.ts';
import { temperatureOf } from '../../checks/judge/warmBands.ts';
import { leavesOf, type Route } from '../../checks/value/route.ts';
import { BAND_NAMES } from '../../documents/limits/bands.ts';
import { correctionIn, isMoved } from '../../measurement/temperature.ts';
import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import { fromBase, type Unit } from '../../quantity/units.ts';
import { positionJson } from '../positionJson.ts';
import { expandedOf, hotEnds } from './hotText.ts';
import { placeJson } from './placeJson.ts';
import { gradedJson } from './sizeText.ts';

/** One characteristic at one position; numbers are in the engine's unit. */
export function rowJson(row: Row, unitFor: (row: Row) => Unit) {
  const unit = unitFor(row);
  const { decimals } = printingOf(row, unitFor);
  const [judged] = row.routes;
  const { deciding, probability, marginal, past, verdict } = row.judgement;
  return {
    measure: row.characteristic.id,
    ...positionJson(row.position),
    label: row.position.label ?? null,
    half: row.half ?? null,
    unit: unit.name,
    decimals,
    written: judged?.route.written ?? [],
    ...numbersJson(judged, unit),
    route: judged?.route.name ?? null,
    routes: row.routes.map((route) => routeJson(route, unit, (of) => unitFor({ ...row, ...of }))),
    bands: Object.fromEntries(
      BAND_NAMES.flatMap((name) => {
        const band = row.limits.bands[name];
        return band === undefined ? [] : [[name, bandJson(band, unit)]];
      }),
    ),
    graded: gradedJson(row, unit),
    limits: { min: limitJson(deciding.min, unit), max: limitJson(deciding.max, unit) },
    limits_degC: limitsTemperature(row),
    hot: hotJson(row, unit),
    probability,
    marginal,
    past: past === undefined ? null : { side: past.side, by: differenceIn(past.by, unit) },
    verdict,
    may_still_be_cut: mayStillBeCut(row, unit),
    left_out: verdict === 'left out' ? (row.notTaken?.reason ?? null) : null,
    read_in: judged?.route.readIn.path ?? null,
    place: placeJson(row.place),
  };
}

const numbersJson = (judged: JudgedRoute | undefined, unit: Unit) =>
  judged === undefined
    ? { least: null, mean: null, greatest: null, u: null, U: null, dof: null }
    : {
        least: numberIn(judged.least, unit),
        mean: numberIn(judged.mean, unit),
        greatest: numberIn(judged.greatest, unit),
        u: shortened(judged.route.u / toNumber(unit.factor)),
        U: shortened(judged.route.expanded / toNumber(unit.factor)),
        dof: Number.isFinite(judged.route.dof) ? shortened(judged.route.dof) : null,
      };

const routeJson = (judged: JudgedRoute, unit: Unit, unitOf: (route: Route) => Unit) => {
  const { least, mean, greatest, u, U } = numbersJson(judged, unit);
  const { route, en, verdict } = judged;
  return {
    route: route.name,
    with: route.with,
    least,
    mean,
    greatest,
    u,
    U,
    en: en === null ? null : shortened(en),
    verdict,
    taken: leavesOf(route).flatMap((leaf) => takenJson(leaf, unitOf(leaf)) ?? []),
  };
};

/** A reading that was taken to another temperature: from where, to where, and how much that adds to its mean. */
function takenJson({ characteristic, position, warmth, measured }: Route, unit: Unit) {
  if (warmth === undefined || !isMoved(warmth)) return undefined;
  return {
    measure: characteristic.id,
    ...positionJson(position),
    from_degC: shortened(toNumber(warmth.from.amount)),
    to_degC: shortened(toNumber(warmth.to.amount)),
    by: differenceIn(correctionIn(measured.mean.amount, warmth), unit),
    unit: unit.name,
  };
}

/** A fit in the running engine; null where that is not stated, or cannot be estimated. */
function hotJson({ hot, routes: [judged] }: Row, unit: Unit) {
  if (hot === undefined || judged === undefined) return null;
  const { least, mean, greatest } = hotEnds(judged, hot);
  return {
    least: numberIn(least, unit),
    mean: numberIn(mean, unit),
    greatest: numberIn(greatest, unit),
    by: numberIn(hot.more.amount, unit),
    U: shortened(expandedOf(hot) / toNumber(unit.factor)),
    at: hot.at,
  };
}

/** Null where no limit says it, and of what is not cut at all. */
function mayStillBeCut({ characteristic, limits, routes: [judged] }: Row, unit: Unit): number | null {
  const found = leftToCut(characteristic, limits.bands, judged?.least);
  if (found === undefined) return null;
  return found.left.n > 0n ? differenceIn(found.left, unit) : 0;
}

/** Null where nothing states it: then they hold at 20 degC. */
const limitsTemperature = ({ limits: { inForce } }: Row): number | null =>
  Object.keys(inForce.temperatures).length === 0 ? null : shortened(toNumber(temperatureOf(inForce).amount));

const bandJson = ({ min, max }: SidedLimits, unit: Unit) => ({
  min: min === undefined ? null : numberIn(min.amount, unit),
  max: max === undefined ? null : numberIn(max.amount, unit),
});

const limitJson = (limit: SideLimit | undefined, unit: Unit) =>
  limit === undefined
    ? null
    : { value: numberIn(limit.amount, unit), band: limit.band, place: placeJson(limit.place) };

/** Twelve digits: a tenth of a nanometre in a metre, and no tail of binary digits. */
export function shortened(value: number): number {
  // Most are readings of few decimals already, and to go by way of text is slow.
  const millionths = Math.round(value * 1e6);
  if (Math.abs(millionths) < 1e12 && millionths / 1e6 === value) return value;
  return Number(value.toPrecision(12));
}

export const numberIn = (amount: Fraction, unit: Unit): number =>
  shortened(
    isWhole(amount) && isWhole(unit.factor) && unit.zero === undefined
      ? // Lengths: the same double as by way of a fraction.
        Number(amount.n) / Number(unit.factor.n)
      : toNumber(fromBase(amount, unit)),
  );

const isWhole = ({ d }: Fraction): boolean => d === 1n;

/** A distance has no zero of a scale to start from, as temperatures have. */
const differenceIn = (amount: Fraction, unit: Unit): number =>
  shortened(toNumber(amount) / toNumber(unit.factor));
