import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { DecisionRule } from '../../documents/engine/shop.ts';
import type { Half } from '../../documents/grades/movement.ts';
import type { BandName } from '../../documents/limits/bands.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { reach } from '../../layout/reach.ts';
import { STANDARD_TEMPERATURE } from '../../measurement/temperature.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { stepsOf } from '../findings/steps.ts';
import { bandsOfCut } from '../grades/cutDown.ts';
import type { FittedSize } from '../grades/madeSize.ts';
import { nominalSize } from '../grades/nominalSizes.ts';
import { type HotFit, hotFit } from '../value/hotFit.ts';
import type { NotTaken } from '../value/notTaken.ts';
import type { Route } from '../value/route.ts';
import { type Holds, normalisedError, type SessionRoutes } from '../value/routes.ts';
import { worstOfEqual } from '../value/worstRouteFirst.ts';
import type { ConcessionInForce, ConcessionOfSide } from './concessionInForce.ts';
import { statedCondition } from './condition.ts';
import type { Found } from './found.ts';
import { incompleteLimits } from './incompleteLimits.ts';
import { limitsAt, type MeansAt, type PositionLimits, settled } from './limits.ts';
import { missing } from './missing.ts';
import { rangedOf } from './ranged.ts';
import { type SharedPin, sharedPin } from './sharedPin.ts';
import { type Bands, decidingOrder } from './sideLimit.ts';
import type { PointRange } from './spans.ts';
import { turnedLimits } from './turnedLimits.ts';
import { type Judged, type Judgement, judge, judgeTest, type Verdict } from './verdict.ts';
import { atStandard, temperatureOf, warmLimits } from './warmBands.ts';

/** How a session is judged; the options of a run over what its documents say. */
export interface JudgingOptions {
  readonly rule?: DecisionRule | undefined;
  readonly judgeBy?: 'new' | 'wear' | undefined;
}

export interface Ends {
  readonly least: Fraction;
  readonly mean: Fraction;
  readonly greatest: Fraction;
}

export interface JudgedRoute extends Ends {
  readonly route: Route;
  readonly verdict: Verdict | null;
  /** Of a reading that was given as a range. */
  readonly spans: readonly PointRange[] | undefined;
  /** Against the judged route; null for that one itself. */
  readonly en: number | null;
  /** What was measured, at 20 °C. */
  readonly standard: Ends;
}

/** One characteristic at one position of a session. */
export interface Row {
  readonly characteristic: Characteristic;
  readonly position: Position;
  /** Of a pair of shells whose halves are of different sizes. */
  readonly half: Half | undefined;
  /** The service size of the part, for which its limits hold. */
  readonly size: FittedSize;
  /** The judged route first; none where the position was left out. */
  readonly routes: readonly JudgedRoute[];
  readonly limits: PositionLimits;
  readonly judgement: Judgement;
  /** Of a value that is out what was conceded on each side, whether it reaches far enough or not. */
  readonly concessions: readonly ConcessionOfSide[];
  /** Of a position that was not measured the `~` in its place. */
  readonly notTaken?: NotTaken | undefined;
  /** The finest last digit that was written at any position of the characteristic: all are printed with it. */
  readonly lastDigit?: Fraction | undefined;
  /** How much more a fit is in the running engine, where that can be estimated. */
  readonly hot: HotFit | undefined;
  /** What its part runs on together with others. */
  readonly shared: SharedPin | undefined;
  readonly place: Place;
}

export interface SessionView {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly session: SessionDocument;
  readonly routes: SessionRoutes;
  /** Where the engine's state is judged: the earlier sessions of its run, the latest first. */
  readonly earlier?: readonly SessionDocument[];
  /** Whether what one of these says still holds. */
  readonly holds?: Holds;
  readonly concessions: readonly ConcessionInForce[];
  readonly options: JudgingOptions;
}

/** Where a session may have a value: any position of the layout, and the steps that it names itself. */
export function positionsIn(
  { family, id }: Characteristic,
  { engine, session, earlier = [] }: SessionView,
): readonly Position[] {
  if (!family.isNamedBySession) return engine.document.layout.positionsOf(family);
  return [session, ...earlier].map((each) => stepsOf(each, id)).find((steps) => steps.length > 0) ?? [];
}

export function rowOf(characteristic: Characteristic, found: Found, view: SessionView): Row {
  const { engine, session, options } = view;
  const { position, stated, routes, routesAt } = found;
  const stood = limitsAt(characteristic, stated, meansAt(position, view), (name) =>
    nominalSize(engine, session, view.registry, name, position),
  );
  const condition = options.judgeBy ?? statedCondition(view, characteristic, position)?.band;
  const orderFor = ({ stage }: SessionDocument): readonly BandName[] => decidingOrder(stage, condition);
  const deciding = ({ bands }: PositionLimits): Bands => bandsOfCut(characteristic, bands, condition);
  const rule = options.rule ?? engine.rule;
  const judged = worstOfEqual(
    routes.map((route) => {
      const order = orderFor(route.readIn);
      const amounts = amountsOf(route, characteristic);
      const turned = turnedLimits(stood, amounts.mean, characteristic.cycle);
      const limits = warmLimits(turned, route, routesAt, characteristic.quantity);
      const value = judgedOf(route, amounts, characteristic);
      return {
        route,
        limits,
        amounts,
        spans: value.spans,
        judgement:
          characteristic.quantity === 'pass or fail'
            ? judgeTest(value)
            : incompleteLimits(judge(value, deciding(limits), order, rule), limits, order),
      };
    }),
  );
  const [first] = judged;
  return {
    characteristic,
    position,
    half: found.half,
    size: found.size,
    routes: judged.map(({ route, amounts, spans, judgement }) => ({
      route,
      ...amounts,
      spans,
      verdict: judgement.verdict,
      en: first === undefined || route === first.route ? null : normalisedError(route, first.route),
      standard: standardOf(route, amounts, atStandard(route, temperatureOf(stated), routesAt)),
    })),
    limits: first?.limits ?? stood,
    judgement:
      first?.judgement ?? missing({ ...stood, bands: deciding(stood) }, orderFor(session), characteristic),
    concessions: [],
    hot: hotFit(characteristic, () => routesAt(STANDARD_TEMPERATURE), view),
    shared: sharedPin(characteristic, position, view.registry, engine.document.layout),
    place: first?.route.place ?? session.start,
  };
}

const standardOf = (route: Route, amounts: Ends, standard: Route): Ends =>
  standard === route ? amounts : amountsOf(standard, route.characteristic);

const amountsOf = ({ measured }: Route, { quantity }: Characteristic): Ends => ({
  least: settled(measured.least.amount, quantity),
  mean: settled(measured.mean.amount, quantity),
  greatest: settled(measured.greatest.amount, quantity),
});

function judgedOf(route: Route, { least, greatest }: Ends, characteristic: Characteristic): Judged {
  const { u, dof, expanded } = route;
  return { least, greatest, u, dof, expanded, ...rangedOf(route, characteristic) };
}

const meansAt =
  (position: Position, { engine, registry, routes }: SessionView): MeansAt =>
  ({ name, at }, warm) => {
    const other = registry.find(name);
    const reached = other && reach(engine.document.layout, position, other.family, at);
    if (other === undefined || reached?.kind !== 'positions' || reached.positions.length === 0)
      return undefined;
    const means = reached.positions.map((each) => routes.at(other, each, {}, warm)[0]?.measured.mean.amount);
    const amounts = means.flatMap((mean) => mean ?? []);
    return amounts.length < means.length ? undefined : { amounts, quantity: other.quantity };
  };
