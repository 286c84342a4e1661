import { compare, type Fraction } from '../../quantity/fraction.ts';
import { distanceBeyond, type Judged, type Judgement, type Verdict } from '../judge/verdict.ts';
import type { Route } from './route.ts';

interface JudgedWay {
  readonly route: Route;
  readonly amounts: Pick<Judged, 'least' | 'greatest'>;
  readonly judgement: Judgement;
}

/**
 * Of routes in a tie the one that lies worst by its limits comes first: no order of the blocks hides an out. Of what
 * one derivation makes of readings in a tie only the worst is kept; the readings themselves stand in their own rows.
 */
export function worstOfEqual<T extends JudgedWay>(ways: readonly T[]): readonly T[] {
  if (ways.length < 2) return ways;
  const equal = new Map<string, T[]>();
  for (const way of ways) {
    const key = keyOf(way.route);
    equal.set(key, [...(equal.get(key) ?? []), way]);
  }
  return [...equal.values()].flatMap((group) => {
    // The sort is stable: routes come in the order of their values.
    const sorted = group.sort(compareWorst);
    return group[0]?.route.block === undefined ? sorted.slice(0, 1) : sorted;
  });
}

const keyOf = ({ name, block, u, takenOn }: Route): string =>
  block === undefined ? name : `read ${u} ${takenOn}`;

const compareWorst = (a: JudgedWay, b: JudgedWay): number =>
  rankOf(a.judgement) - rankOf(b.judgement) || compareDistance(distanceOf(b), distanceOf(a));

const WORST_FIRST: readonly (Verdict | null)[] = ['out', 'undecided', null, 'worn', 'off target', 'ok'];

const rankOf = ({ verdict }: Judgement): number => WORST_FIRST.indexOf(verdict);

const distanceOf = ({ amounts, judgement }: JudgedWay): Fraction | undefined =>
  distanceBeyond(amounts, judgement.deciding);

const compareDistance = (a: Fraction | undefined, b: Fraction | undefined): number =>
  a === undefined || b === undefined ? 0 : compare(a, b);
