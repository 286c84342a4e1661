import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { DecisionRule } from '../../documents/engine/shop.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, sortFindings } from '../finding.ts';
import { once } from '../once.ts';
import { unusedAcceptances, withAccepted } from '../open/acceptedWarnings.ts';
import { deepFindings } from '../open/deepFound.ts';
import { type FollowUpState, followUpsOf, openFollowUps } from '../open/followUps.ts';
import { foundFindings } from '../open/found.ts';
import { openFound, seenIn } from '../open/openFound.ts';
import { withClamping } from '../state/clampedSizes.ts';
import { type EarlierRow, rowsBeforeWork, withLastKnown } from '../state/lastKnown.ts';
import { latestRun, runsOf } from '../state/run.ts';
import { judgeState } from '../state/state.ts';
import { isVoidTest, testsToRepeat } from '../state/testsToRepeat.ts';
import { historyFindings } from '../tightening/history.ts';
import type { EngineRoutes } from '../value/routes.ts';
import type { JudgingOptions, Row } from './row.ts';
import { type JudgedSession, judgeSession, unitOfRow } from './session.ts';

/** An engine with its judged sessions, in the order of their dates. */
export interface EngineReport {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly rule: DecisionRule;
  readonly sessions: readonly ReportedSession[];
  readonly followUps: readonly FollowUpState[];
  /** Where it stands now; undefined where it has no session. */
  readonly state: StateReport | undefined;
}

/** The state of an engine after the sessions since it last ran. */
export interface StateReport extends ReportedSession {
  /** Those sessions, the earliest first. */
  readonly run: readonly SessionDocument[];
  /** How each joint was tightened last. */
  readonly tightened: readonly TighteningLog[];
  /** Joints of the engine that none of those sessions says were tightened. */
  readonly untightened: readonly TorqueDocument[];
  /** What was measured once and holds no longer: shown, and never judged. */
  readonly lastKnown: readonly EarlierRow[];
}

export const isState = (shown: ReportedSession | StateReport): shown is StateReport => 'run' in shown;

export interface ReportedSession extends JudgedSession {
  /** The row of the latest earlier session that has a value of the same thing there. */
  readonly before: (row: Row) => EarlierRow | undefined;
}

export function reportEngine(engine: Engine, registry: Registry, options: JudgingOptions): EngineReport {
  const built: EngineRoutes = new Map();
  const judged = engine.sessions.map((session) => judgeSession(engine, registry, session, options, built));
  const followUps = followUpsOf(judged);
  const history = once(() => historyFindings(engine));
  const found = once(() => openFound(engine.sessions, engine, registry));
  const openIn = ({ session }: JudgedSession): readonly Finding[] => [
    ...openFollowUps(followUps, session, unitsFor(engine)),
    ...foundFindings(seenIn(session, found())),
    ...deepFindings(seenIn(session, found()), engine),
  ];
  const read = judged.map((each) => once(() => rowsByKey(each)));
  const sessions = withEarlierRows(judged, read, (each) => [
    ...openIn(each),
    ...(history().get(each.session) ?? []),
  ]);
  const state = once(() => {
    const standing = judgeState(engine, registry, runOf(engine, sessions), options, built);
    const known = judged.map((each, index) => () => [
      ...rowsBeforeWork(each, engine, registry, options).map(
        (row) => [keyOf(row), { row, date: each.session.date }] as const,
      ),
      ...(read[index]?.() ?? []),
    ]);
    return standing && stateReport(standing, { engine, registry }, sessions, openIn, latestOf(known));
  });
  return {
    engine,
    registry,
    rule: options.rule ?? engine.rule,
    sessions,
    followUps,
    get state() {
      return state();
    },
  };
}

const runOf = ({ sessions: all }: Engine, sessions: readonly ReportedSession[]): readonly ReportedSession[] =>
  sessions.slice(sessions.length - latestRun(all).length);

function stateReport(
  state: JudgedSession,
  { engine, registry }: Pick<EngineReport, 'engine' | 'registry'>,
  sessions: readonly ReportedSession[],
  openIn: (session: ReportedSession) => readonly Finding[],
  latest: RowsByKey,
): StateReport {
  const run = runOf(engine, sessions);
  const documents = run.map(({ session }) => session);
  // What is open stays so however often the engine has run since.
  const stillOpen = sessions.slice(0, sessions.length - run.length).flatMap(openIn);
  const beforeOf = (row: Row): EarlierRow | undefined =>
    row.routes.length === 0
      ? latest.get(keyOf(row))
      : run.find(({ session }) => session === row.routes[0]?.route.readIn)?.before(row);
  const around = { run: documents, parts: registry.parts, layout: engine.document.layout };
  const rows = state.rows.filter((row) => !isVoidTest(row, around));
  const standing = new Set(rows.filter(({ routes }) => routes.length > 0).map(keyOf));
  const lastKnown = [...latest].flatMap(([key, row]) => (standing.has(key) ? [] : [row]));
  const all = [...state.findings, ...stillOpen];
  const unused = documents.every(({ accepted }) => accepted.length === 0)
    ? []
    : unusedAcceptances([...all, ...run.flatMap((each) => each.findings)], documents);
  const said = withAccepted(withClamping(all, documents, { engine, registry }), documents);
  const known = withLastKnown([...said, ...unused], lastKnown, unitsFor(engine));
  const tests = [...rows, ...lastKnown.map(({ row }) => row)];
  const findings = sortFindings([...known, ...testsToRepeat(tests, around)]);
  const tightened = latestLogs(documents);
  return {
    ...state,
    rows,
    findings,
    run: documents,
    tightened,
    untightened: engine.sequences.filter(({ name }) =>
      tightened.every(({ document }) => document.name !== name),
    ),
    lastKnown,
    before: beforeOf,
  };
}

function withEarlierRows(
  judged: readonly JudgedSession[],
  read: readonly (() => RowsByKey)[],
  ofHistory: (session: JudgedSession) => readonly Finding[],
): readonly ReportedSession[] {
  const runs = once(() => runsOf(judged.map(({ session }) => session)));
  return judged.map((each, index) => {
    const run = once(() => runs().find((one) => one.includes(each.session)) ?? []);
    const findings = once(() => sortFindings(withAccepted([...each.findings, ...ofHistory(each)], run())));
    const taken = once(() => sortFindings([...each.taken, ...ofHistory(each)]));
    return {
      session: each.session,
      rows: each.rows,
      get findings() {
        return findings();
      },
      get taken() {
        return taken();
      },
      get steppedBack() {
        return each.steppedBack;
      },
      before: (row: Row) => latestIn(read.slice(0, index), keyOf(row)),
    };
  });
}

type RowsByKey = ReadonlyMap<string, EarlierRow>;

/** What a session has a value of. */
const rowsByKey = ({ rows, session: { date } }: JudgedSession): RowsByKey =>
  new Map(rows.filter(({ routes }) => routes.length > 0).map((row) => [keyOf(row), { row, date }] as const));

/** Of each thing what the last session says that has a value of it. */
const latestOf = (read: readonly (() => Iterable<readonly [string, EarlierRow]>)[]): RowsByKey =>
  new Map(read.flatMap((each) => [...each()]));

function latestIn(read: readonly (() => RowsByKey)[], key: string): EarlierRow | undefined {
  for (const each of read.toReversed()) {
    const found = each().get(key);
    if (found !== undefined) return found;
  }
  return undefined;
}

const keyOf = ({ characteristic, position, half }: Row): string =>
  `${characteristic.id} ${position.key} ${half ?? ''}`;

const latestLogs = (run: readonly SessionDocument[]): readonly TighteningLog[] => [
  ...new Map(
    run.flatMap(({ tightened }) => tightened.map((log) => [log.document.name, log] as const)),
  ).values(),
];

export const unitsFor =
  (engine: Engine) =>
  (row: Row): Unit =>
    unitOfRow(row, engine);
