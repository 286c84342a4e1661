import type { Measured } from '../../characteristics/grid.ts';
import { compareText } from '../../diagnostic/place.ts';
import { compare } from '../../quantity/fraction.ts';
import type { Route } from './route.ts';

/**
 * The finest route first; of equally fine ones what was read directly, then what was read on the later date. What is
 * still in a tie stands in the order of its values, never in that of the file: blocks may be written in any order.
 */
export const compareRoutes = (a: Route, b: Route): number => compareRank(a, b) || compareValues(a, b);

/** The routes that nothing sets below the first: which of them counts depends on what they are judged by. */
export function equalToFirst(routes: readonly Route[]): readonly Route[] {
  const [first] = routes;
  if (first === undefined || routes.length === 1) return routes;
  return routes.filter((each) => compareRank(first, each) === 0);
}

/**
 * What a derivation may be worked out from: those in a tie together, to be judged by the worst that comes of them. With
 * one input alone also the others, should the first not do: a single check reading must not take away the out of round
 * that a whole grid has shown.
 */
export function* choicesOf(inputs: readonly (readonly Route[])[]): Generator<readonly (readonly Route[])[]> {
  const [only, ...others] = inputs;
  if (only === undefined || others.length > 0) {
    yield combinations(inputs.map((routes) => endsOf(equalToFirst(routes))));
    return;
  }
  for (let rest = only; rest.length > 0; ) {
    const equal = equalToFirst(rest);
    yield equal.map((route) => [route]);
    rest = rest.slice(equal.length);
  }
}

/** A formula over many readings, each taken twice, would double with every one of them. */
const MOST_WAYS = 64;

/** One of each, in every way up to a limit; none where one is lacking. */
const combinations = (inputs: readonly (readonly Route[])[]): readonly (readonly Route[])[] =>
  inputs.reduce<readonly (readonly Route[])[]>(
    (found, routes) => {
      const open = found.length < MOST_WAYS ? routes : routes.slice(0, 1);
      return found.flatMap((chosen) => open.map((route) => [...chosen, route]));
    },
    [[]],
  );

/** Of routes in a tie those that read lowest and highest: between them lies all that can be worked out from them. */
function endsOf(equal: readonly Route[]): readonly Route[] {
  if (equal.length < 3) return equal;
  const [lowest] = [...equal].sort((a, b) => compareAmounts(a, b, 'least'));
  const [highest] = [...equal].sort((a, b) => compareAmounts(b, a, 'greatest'));
  return [...new Set([lowest, highest])].filter((each) => each !== undefined);
}

/** What was read here counts before the figures of others, however fine those are. */
const compareRank = (a: Route, b: Route): number =>
  Number(isOfOthers(a)) - Number(isOfOthers(b)) ||
  a.u - b.u ||
  Number(a.block === undefined) - Number(b.block === undefined) ||
  compareText(b.takenOn, a.takenOn);

const ENDS: readonly (keyof Pick<Measured, 'least' | 'greatest' | 'mean'>)[] = ['least', 'greatest', 'mean'];

function compareValues(a: Route, b: Route): number {
  for (const end of ENDS) {
    const order = compareAmounts(a, b, end);
    if (order !== 0) return order;
  }
  return compareText(readingKey(a), readingKey(b));
}

const compareAmounts = (a: Route, b: Route, end: (typeof ENDS)[number]): number =>
  compare(a.measured[end].amount, b.measured[end].amount);

/** Readings of equal ends may still be paired by different names. */
const readingKey = ({ written, with: instruments, grid }: Route): string =>
  JSON.stringify([written, instruments, grid.stations.map(({ name }) => name), grid.directions]);

/** A machine shop's figures, or worked out from some of them. */
export const isOfOthers = ({ block, inputs }: Route): boolean =>
  block?.from !== undefined || inputs.some(isOfOthers);
