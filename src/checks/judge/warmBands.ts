import { BAND_NAMES, type BandName } from '../../documents/limits/bands.ts';
import { commonTemperature } from '../../documents/limits/limitTemperature.ts';
import type { LimitsInForce } from '../../documents/limits/precedence.ts';
import {
  isSameTemperature,
  STANDARD_TEMPERATURE,
  type StatedTemperature,
} from '../../measurement/temperature.ts';
import { add, type Fraction, subtract } from '../../quantity/fraction.ts';
import type { Quantity } from '../../quantity/units.ts';
import type { Route } from '../value/route.ts';
import { type PositionLimits, settled } from './limits.ts';
import type { SidedLimits, SideLimit } from './sideLimit.ts';

/** What a position gives where its readings are taken to another temperature. */
export type RoutesAt = (warm: StatedTemperature) => readonly Route[];

/** The temperature at which the readings of a position meet its limits. */
export const temperatureOf = ({ temperatures }: LimitsInForce): StatedTemperature =>
  commonTemperature(temperatures);

/** The bands that hold at another temperature than the one at which a position is judged. */
export function bandsElsewhere({
  bands,
  temperatures,
}: LimitsInForce): readonly (readonly [BandName, StatedTemperature])[] {
  const here = commonTemperature(temperatures);
  return BAND_NAMES.flatMap((name) => {
    const stated = temperatures[name] ?? STANDARD_TEMPERATURE;
    return bands[name] === undefined || isSameTemperature(stated, here) ? [] : [[name, stated] as const];
  });
}

/**
 * Bands of several temperatures moved to the one at which a value is judged, each as far as the value itself moves
 * between the two. So what is exactly on a limit stays on it, a clearance of unlike parts moves as they do, and what
 * was read at no known temperature is compared with figures as they are written.
 */
export function warmLimits(
  limits: PositionLimits,
  route: Route,
  routesAt: RoutesAt,
  quantity: Quantity,
): PositionLimits {
  const { bands, inForce } = limits;
  // Most limits state no temperature.
  if (Object.keys(inForce.temperatures).length === 0) return limits;
  const elsewhere = bandsElsewhere(inForce);
  if (elsewhere.length === 0) return limits;
  const moved = elsewhere.map(([name, stated]) => {
    const there = routesAt(stated).find((each) => isSameRoute(each, route));
    return [name, bands[name] && movedBand(bands[name], route, there ?? route, quantity)] as const;
  });
  return { ...limits, bands: { ...bands, ...Object.fromEntries(moved) } };
}

const movedBand = ({ min, max }: SidedLimits, to: Route, from: Route, quantity: Quantity): SidedLimits => {
  const moved = (limit: SideLimit | undefined, by: Fraction): SideLimit | undefined =>
    limit && { ...limit, amount: settled(add(limit.amount, by), quantity), stated: limit.amount };
  return { min: moved(min, gap(to, from, 'least')), max: moved(max, gap(to, from, 'greatest')) };
};

const gap = (to: Route, from: Route, end: 'least' | 'greatest'): Fraction =>
  subtract(to.measured[end].amount, from.measured[end].amount);

/** The same way to the same value at 20 °C: so values that were judged at unlike temperatures compare. */
export const atStandard = (route: Route, warm: StatedTemperature, routesAt: RoutesAt): Route =>
  isSameTemperature(warm, STANDARD_TEMPERATURE)
    ? route
    : (routesAt(STANDARD_TEMPERATURE).find((each) => isSameRoute(each, route)) ?? route);

/** The same readings, worked out in the same way. */
const isSameRoute = (a: Route, b: Route): boolean =>
  a.name === b.name &&
  a.block === b.block &&
  a.position === b.position &&
  a.inputs.length === b.inputs.length &&
  a.inputs.every((input, index) => {
    const other = b.inputs[index];
    return other !== undefined && isSameRoute(input, other);
  });
