import type { Row, SessionView } from '../../checks/judge/row.ts';
import { latestRun } from '../../checks/state/run.ts';
import { standingRows } from '../../checks/state/state.ts';
import { type Alternative, alternatives } from '../../checks/value/alternatives.ts';
import type { Engine } from '../../documents/assemble.ts';
import { conformanceProbability } from '../../measurement/conformance.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Judgeable } from '../state.ts';

/** A verdict that an engine stands with and that its instruments leave open. */
export interface UndecidedRow {
  readonly engine: Engine;
  readonly row: Row;
  /** Which part of its doubt (of the squares) each instrument has, the largest first. */
  readonly shares: readonly (readonly [instrument: string, share: number])[];
  /** What the register has that would decide it, if it read the same. */
  readonly better: Alternative | undefined;
}

/** What an engine stands with, counted and undecided. */
export interface Standing {
  readonly verdicts: number;
  readonly undecided: readonly UndecidedRow[];
}

/** On a day: what is overdue by then decides nothing. */
export function standingOf({ engine, registry }: Judgeable, day: string | undefined): Standing {
  const standing = standingRows(engine, registry, latestRun(engine.sessions));
  const rows = standing?.rows.filter(({ judgement }) => judgement.verdict !== null) ?? [];
  const open = rows.filter(({ judgement }) => judgement.verdict === 'undecided');
  const undecided = open.map((row) => ({
    engine,
    row,
    shares: sharesOf(row),
    better: standing && betterFor(row, withoutOverdue(standing.view, day)),
  }));
  return { verdicts: rows.length, undecided };
}

function withoutOverdue(view: SessionView, day: string | undefined): SessionView {
  if (day === undefined) return view;
  const instruments = new Map(
    [...view.engine.instruments].filter(([, { due }]) => due === undefined || due >= day),
  );
  return { ...view, engine: { ...view.engine, instruments } };
}

function sharesOf({ routes: [judged] }: Row): UndecidedRow['shares'] {
  const squares = new Map<string, number>();
  let whole = 0;
  for (const { u, of } of judged?.route.worse.terms.values() ?? []) {
    whole += u * u;
    if (of !== undefined) squares.set(of, (squares.get(of) ?? 0) + u * u);
  }
  return [...squares].map(([id, square]) => [id, square / whole] as const).sort(([, a], [, b]) => b - a);
}

/** Of what was read as a range nobody knows what another instrument would have read. */
function betterFor(row: Row, view: SessionView): Alternative | undefined {
  const [judged] = row.routes;
  if (judged === undefined || judged.spans !== undefined) return undefined;
  const { route } = judged;
  return alternatives(row.characteristic, row.position, route, view).find(
    ({ u }) => u < route.u && isDecided(row, u),
  );
}

/** ISO 14253-1, as the guarded rule has it: proven inside from 95 %, outside up to 5 %. */
function isDecided({ judgement: { deciding }, routes: [judged] }: Row, u: number): boolean {
  if (judged === undefined) return false;
  const probability = conformanceProbability({
    least: toNumber(judged.least),
    greatest: toNumber(judged.greatest),
    u,
    dof: Number.POSITIVE_INFINITY,
    ...(deciding.min === undefined ? {} : { min: toNumber(deciding.min.amount) }),
    ...(deciding.max === undefined ? {} : { max: toNumber(deciding.max.amount) }),
  });
  return probability >= 0.95 || probability <= 0.05;
}
