import type { Printing } from '../../checks/findings/readings.ts';
import type { SideLimit } from '../../checks/judge/sideLimit.ts';
import type { Change } from '../../compare/change.ts';
import type { ConcessionChange, EngineDiff } from '../../compare/diff.ts';
import { type LimitChange, statedAmount, warmthOf } from '../../compare/limitChanges.ts';
import type { RewrittenSession } from '../../compare/rewritten.ts';
import type { EngineState, StateValue } from '../../compare/state.ts';
import { coordinatesByAxis } from '../../layout/position.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { VERSION } from '../../version.ts';
import { numberIn, shortened } from '../check/rowJson.ts';
import { positionJson } from '../positionJson.ts';
import type { Comparison } from './comparison.ts';
import { printingOfChange } from './diffWords.ts';

/** What `tenths diff --format json` prints. */
export const diffJson = ({ sides: { a, b }, engines, notCompared }: Comparison, exit: 0 | 1 | 2) => ({
  format: 'tenths.diff',
  version: 2,
  tool: { name: 'tenths', version: VERSION },
  exit,
  a,
  b,
  engines: engines.map(engineJson),
  not_compared: notCompared.map(({ path, sides }) => ({ path, sides: sides.map(({ name }) => name) })),
});

const engineJson = ({ path, name, diff, unitFor }: EngineDiff) => ({
  path,
  name,
  rows: diff.changes.map((change) => rowJson(change, unitFor)),
  limits: diff.limits.map((each) => limitJson(each, unitFor)),
  concessions: diff.concessions.map(concessionJson),
  rewritten: diff.rewritten.map(rewrittenJson),
});

function rowJson(change: Change, unitFor: EngineState['unitFor']) {
  const printing = printingOfChange(change, unitFor);
  const { unit } = printing;
  const { characteristic, position, state, crossed, a, b, delta, expanded, moved, unlike } = change;
  return {
    measure: characteristic.id,
    ...positionJson(position),
    state,
    crossed,
    a: sideJson(a, printing),
    b: sideJson(b, printing),
    unit: unit.name,
    delta: delta === null ? null : inUnits(toNumber(delta), unit),
    U: expanded === null ? null : inUnits(expanded, unit),
    toward: moved?.toward ?? null,
    unlike,
  };
}

/** A difference has no zero of a scale to start from. */
const inUnits = (size: number, unit: Unit): number => shortened(size / toNumber(unit.factor));

function sideJson(side: StateValue | undefined, { unit }: Printing) {
  const judged = side?.row.routes[0];
  if (side === undefined || judged === undefined) return null;
  return {
    written: judged.route.written,
    value: numberIn(judged.mean, unit),
    least: numberIn(judged.least, unit),
    greatest: numberIn(judged.greatest, unit),
    verdict: side.row.judgement.verdict,
    session: side.session.path,
    date: side.session.date,
    route: judged.route.name,
    with: judged.route.with,
  };
}

function limitJson({ row, band, side, a, b }: LimitChange, unitFor: EngineState['unitFor']) {
  const unit = unitFor(row);
  const value = (limit: SideLimit | undefined): number | null =>
    limit === undefined ? null : numberIn(statedAmount(limit), unit);
  const warm = (limit: SideLimit | undefined): number | null =>
    limit === undefined ? null : shortened(toNumber(warmthOf(limit).amount));
  return {
    measure: row.characteristic.id,
    ...positionJson(row.position),
    band,
    side,
    a: value(a),
    b: value(b),
    unit: unit.name,
    a_degC: warm(a),
    b_degC: warm(b),
  };
}

const concessionJson = ({ concession, session, state }: ConcessionChange) => ({
  state,
  measure: concession.measure.id,
  positions: concession.positions.map(({ name }) => name),
  at: concession.positions.map(coordinatesByAxis),
  up_to: concession.upTo?.written ?? null,
  down_to: concession.downTo?.written ?? null,
  reason: concession.reason,
  session: session.path,
});

const rewrittenJson = ({ session, state, readings }: RewrittenSession) => ({
  state,
  session: session.path,
  readings: readings.map(({ measure, position, a, b }) => ({
    measure: measure.id,
    ...positionJson(position),
    a,
    b,
  })),
});
