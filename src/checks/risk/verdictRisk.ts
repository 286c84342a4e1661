import { conformanceProbability } from '../../measurement/conformance.ts';
import { drawnTowards, globalRisks, provenWindow, type Risks, type Window } from '../../measurement/risk.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { JudgedRoute, Row } from '../judge/row.ts';

/** What may come of a verdict that rests on a value of this uncertainty. */
export interface VerdictRisk {
  /** That it is inside, by its reading alone. */
  readonly inside: number;
  /** The same beside what such parts are as a rule; undefined where nobody states that. */
  readonly insideAsUsual: number | undefined;
  /** Of all such parts, measured as this one: by what is read inside, and by what is proven inside. */
  readonly simple: Risks | undefined;
  readonly guarded: Risks | undefined;
}

/** With another uncertainty where one is given; undefined where no limit decides, or the reading is a range. */
export function verdictRisk(row: Row, u?: number): VerdictRisk | undefined {
  const [judged] = row.routes;
  const { min, max } = row.judgement.deciding;
  if (judged === undefined || judged.spans !== undefined || (min === undefined && max === undefined))
    return undefined;
  const limits: Window = { min: min && toNumber(min.amount), max: max && toNumber(max.amount) };
  const standard = u ?? judged.route.u;
  if (standard === 0) return undefined;
  const dof = u === undefined ? judged.route.dof : Number.POSITIVE_INFINITY;
  const { usual } = row.limits.inForce;
  return {
    inside: insideOf(judged, (each) => ({ value: each, u: standard }), limits, dof),
    insideAsUsual: usual && insideOf(judged, (each) => drawnTowards(each, standard, usual), limits, dof),
    simple: usual && globalRisks(usual, standard, limits, limits),
    guarded: usual && globalRisks(usual, standard, limits, provenWindow(limits, standard, PROVEN)),
  };
}

const PROVEN = 0.95;

function insideOf(
  { least, greatest }: JudgedRoute,
  known: (end: number) => { readonly value: number; readonly u: number },
  limits: Window,
  dof: number,
): number {
  const [low, high] = [known(toNumber(least)), known(toNumber(greatest))];
  return conformanceProbability({ least: low.value, greatest: high.value, u: low.u, dof, ...limits });
}
