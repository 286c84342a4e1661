import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Quantity, type Unit, unitsOf } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding, sortFindings } from '../finding.ts';
import { capabilityFindings } from '../findings/capability.ts';
import { concessionFindings } from '../findings/concessions.ts';
import { conditionFindings } from '../findings/conditions/conditions.ts';
import { figuresOfUnlikeReadings, unlikeReadingFindings } from '../findings/conditions/unlikeReadings.ts';
import { distanceFindings } from '../findings/distances.ts';
import { effectOf } from '../findings/effects.ts';
import { emptySessionFindings } from '../findings/emptySession.ts';
import { instrumentFindings } from '../findings/instruments.ts';
import { ownFormulaFindings } from '../findings/ownFormulas.ts';
import { ownIdFindings } from '../findings/ownIds.ts';
import { readingFindings } from '../findings/readings.ts';
import { scaleFindings } from '../findings/resolutionAndRange.ts';
import { spreadFindings } from '../findings/spread.ts';
import { stepLimitFindings } from '../findings/stepLimits.ts';
import { temperatureFindings } from '../findings/temperature.ts';
import { turningFindings } from '../findings/turning.ts';
import { unagreedFindings } from '../findings/unagreed.ts';
import { gradeFindings } from '../grades/gradeFindings.ts';
import { limitsOfFitted } from '../grades/madeSize.ts';
import { sizesOrSlips } from '../grades/sizesOrSlips.ts';
import { statedSizeFindings } from '../grades/statedSizes.ts';
import { unlikeFitFindings } from '../grades/unlikeFits.ts';
import { oneForOldSizes, oneForUnstatedSizes } from '../grades/unstatedSizes.ts';
import { markedSizeFindings } from '../history/markedSizes.ts';
import { unstatedCutFindings } from '../history/unstatedCut.ts';
import { once } from '../once.ts';
import { unstatedSourceFindings } from '../open/unstatedSources.ts';
import { impossibleFindings } from '../slips/impossible.ts';
import { oneFindingForOneCause } from '../slips/oneCause.ts';
import { slipContext, slipFindings, slipsOfThoseApart } from '../slips/slips.ts';
import { tighteningFindings } from '../tightening/tightening.ts';
import { type MeasuredSession, measuredRows, viewOf } from '../value/measured.ts';
import type { EngineRoutes } from '../value/routes.ts';
import { type SteppedBack, steppedBackIn } from '../value/steppedBack.ts';
import type { JudgingOptions, Row, SessionView } from './row.ts';

export const UNMEASURED: FindingKind = {
  code: 'session/unmeasured',
  severity: 'remark',
  means:
    'A characteristic has limits that would decide at this stage and is measured nowhere in the session; or a test was made before its part was machined, and not again. At a rebuild it is a warning.',
  matters: 'The engine is assembled with unmeasured parts.',
  usually: 'Measure it now, or in a later session before the engine is closed up.',
  example: 'crankshaft end play has limits and was not measured',
};

export const sessionKinds: readonly FindingKind[] = [UNMEASURED];

export interface JudgedSession extends MeasuredSession {
  readonly findings: readonly Finding[];
  /** What an engine's state goes on saying of them: all but what was said of the values, unless that is part of a cause. */
  readonly taken: readonly Finding[];
  readonly steppedBack: readonly SteppedBack[];
}

/**
 * Measures, judges and comments on one session. Pure: the same documents give the same result. Comments on nothing until
 * it is asked for its findings: most sessions are history, of which only the values count.
 */
export function judgeSession(
  engine: Engine,
  registry: Registry,
  session: SessionDocument,
  options: JudgingOptions = {},
  built?: EngineRoutes,
): JudgedSession {
  const view = viewOf(engine, registry, session, options, built);
  const rows = measuredRows(view);
  const ofReadings = once(() => findingsOfReadings(view, rows));
  const findings = once(() => oneForOne([...findingsOfRows(view, rows), ...ofReadings()], rows));
  const hasCauses = (): boolean => ofReadings().some(({ covers }) => covers !== undefined);
  const taken = once(() => (hasCauses() ? findings() : sortFindings(ofReadings())));
  const steppedBack = once(() => steppedBackIn(view));
  return {
    session,
    rows,
    get findings() {
      return findings();
    },
    get taken() {
      return taken();
    },
    get steppedBack() {
      return steppedBack();
    },
  };
}

const oneForOne = (findings: readonly Finding[], rows: readonly Row[]): readonly Finding[] =>
  sortFindings(oneFindingForOneCause(findings, rows));

const unitsFor =
  ({ engine }: SessionView) =>
  (row: Pick<Row, 'characteristic'>): Unit =>
    unitOfRow(row, engine);

/** What its values are, and what is missing among them. */
function findingsOfRows(view: SessionView, rows: readonly Row[]): readonly Finding[] {
  const unitFor = unitsFor(view);
  const unlike = figuresOfUnlikeReadings(view);
  return [
    ...rows.flatMap((row) => readingFindings(row, unitFor, effectOf(row, rows))),
    ...concessionFindings(rows, view.concessions, unitFor),
    ...conditionFindings(rows),
    ...markedSizeFindings(rows, view, unitFor),
    ...unlikeReadingFindings(unlike),
    ...unmeasured(view, rows, [...distanceFindings(view), ...unlike]),
  ];
}

/** What is wrong with its readings, and how they were taken. */
function findingsOfReadings(view: SessionView, rows: readonly Row[]): readonly Finding[] {
  const { engine, session } = view;
  const unitFor = unitsFor(view);
  const looking = slipContext(view, rows, unitFor);
  const [grades, slips] = sizesOrSlips(gradeFindings(view, rows, unitFor), slipFindings(looking), rows);
  const apart = spreadFindings(rows, [...grades, ...slips], view, unitFor);
  return [
    ...turningFindings(session, rows, unitFor),
    ...instrumentFindings(view, rows, unitFor),
    ...scaleFindings(view),
    ...capabilityFindings(view, rows, unitFor),
    ...distanceFindings(view),
    ...stepLimitFindings(view),
    ...ownFormulaFindings(view),
    ...ownIdFindings(rows),
    ...temperatureFindings(view, unitFor),
    ...oneForOldSizes(oneForUnstatedSizes(grades, rows, view), rows, view),
    ...unstatedCutFindings(rows, view, unitFor),
    ...statedSizeFindings(view),
    ...unlikeFitFindings(view),
    ...slips,
    ...impossibleFindings(rows, unitFor),
    ...slipsOfThoseApart(apart, looking),
    ...emptySessionFindings(session),
    ...unagreedFindings(engine, session),
    ...unstatedSourceFindings(view),
    ...tighteningFindings(engine, session),
  ];
}

/** The engine's unit; where it states none for a quantity, the quantity's first. */
export function unitOf(quantity: Quantity, engine: Engine): Unit {
  const unit = engine.units.get(quantity) ?? unitsOf(quantity)[0];
  if (unit === undefined) throw new RangeError(`${quantity} has no unit`);
  return unit;
}

export const unitOfRow = ({ characteristic }: Pick<Row, 'characteristic'>, engine: Engine): Unit =>
  unitOf(characteristic.quantity, engine);

/** Characteristics whose limits would decide, and of which the session holds nothing. */
export function unmeasured(
  { engine, registry, session, routes }: SessionView,
  rows: readonly Row[],
  reported: readonly Pick<Finding, 'measure'>[],
): readonly Finding[] {
  // What was measured, and what was said already to be measured in vain.
  const measured = new Set([
    ...rows.map((row) => row.characteristic.id),
    ...reported.map((each) => each.measure),
  ]);
  return registry.all
    .filter((each) => !measured.has(each.id) && !each.family.isNamedBySession)
    .filter((each) => hasDecidingLimit(each, engine, session))
    .filter(
      (each) =>
        !engine.document.layout.positionsOf(each.family).some((position) => routes.isInUsed(each, position)),
    )
    .map((each) =>
      finding(UNMEASURED, session.start, `${each.label} has limits and was not measured`, {
        measure: each.id,
        severity: session.stage === 'rebuild' ? 'warning' : 'remark',
      }),
    );
}

/** At any stage: each side falls back to the other band. */
const DECIDING = ['new', 'wear', 'last'] as const;

function hasDecidingLimit(characteristic: Characteristic, engine: Engine, session: SessionDocument): boolean {
  if (!engine.limits.some(({ limits }) => limits.has(characteristic.id))) return false;
  return engine.document.layout.positionsOf(characteristic.family).some((position) => {
    const { bands } = limitsOfFitted(engine, session, characteristic, position);
    return DECIDING.some((band) => bands[band]?.min !== undefined || bands[band]?.max !== undefined);
  });
}
