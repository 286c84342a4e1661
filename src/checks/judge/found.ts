import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Half } from '../../documents/grades/movement.ts';
import type { LimitsInForce } from '../../documents/limits/precedence.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { halfRoute } from '../grades/halfRoute.ts';
import { type FittedSize, fittedSize, limitsOfFitted } from '../grades/madeSize.ts';
import type { Route } from '../value/route.ts';
import type { SessionRoutes } from '../value/routes.ts';
import { type RoutesAt, temperatureOf } from './warmBands.ts';

/** What was measured, in what, and by which characteristics. */
interface Measuring {
  readonly engine: Engine;
  readonly session: SessionDocument;
  readonly routes: SessionRoutes;
}

/** What limits a position, and what was measured there. */
export interface Found {
  readonly position: Position;
  readonly half: Half | undefined;
  readonly size: FittedSize;
  readonly stated: LimitsInForce;
  /** At the temperature at which they meet the limits, and at any other. */
  readonly routes: readonly Route[];
  readonly routesAt: RoutesAt;
}

export function foundAt(
  characteristic: Characteristic,
  position: Position,
  half: Half | undefined,
  view: Measuring,
): Found {
  const { engine, routes, session } = view;
  const stated = limitsOfFitted(engine, session, characteristic, position, half);
  const isAsked = isWanted(characteristic, stated, session);
  const { by, per } = stated;
  const routesAt: RoutesAt = (warm) => {
    const all = isAsked ? routes.at(characteristic, position, { by, per }, warm) : [];
    return half === undefined ? all : all.flatMap((route) => halfRoute(route, half) ?? []);
  };
  return {
    position,
    half,
    size: fittedSize(engine, session, characteristic, position, half),
    stated,
    routes: routesAt(temperatureOf(stated)),
    routesAt,
  };
}

/** Some figures are worked out only where a limit or a reading of their own asks for them. */
export const isWanted = (
  { onlyWithLimits, id }: Characteristic,
  { bands }: LimitsInForce,
  { blocks }: SessionDocument,
): boolean =>
  onlyWithLimits !== true || Object.keys(bands).length > 0 || blocks.some(({ measure }) => measure.id === id);
