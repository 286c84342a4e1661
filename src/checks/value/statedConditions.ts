import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import { compare, type Fraction, parseDecimal } from '../../quantity/fraction.ts';
import { findUnit, toBase } from '../../quantity/units.ts';
import type { Route } from './route.ts';

/** The conditions of all blocks that a route comes from. */
export function statedIn(route: Route): ReadonlyMap<string, ReadonlySet<string>> {
  const stated = new Map<string, Set<string>>();
  for (const { conditions } of blocksOf(route)) {
    for (const [what, how] of conditions) {
      const known = stated.get(what) ?? new Set();
      stated.set(what, known.add(how.trim().toLowerCase()));
    }
  }
  return stated;
}

const blocksOf = ({ block, inputs }: Route): readonly ReadingBlock[] =>
  block === undefined ? inputs.flatMap(blocksOf) : [block];

/** Two readings of one figure, and the condition that it depends on and that they do not share. */
export interface UnlikeReadings {
  readonly condition: string;
  readonly readings: readonly [StatedReading, StatedReading];
}

interface StatedReading {
  readonly route: Route;
  readonly stated: string;
}

/** Degrees at one lift and degrees at another have no sum: undefined where nothing is known to differ. */
export function unlikeReadings(
  { under = [] }: Characteristic,
  routes: readonly Route[],
): UnlikeReadings | undefined {
  for (const condition of under) {
    const all = routes.flatMap((route) =>
      [...(statedIn(route).get(condition) ?? [])].map((stated) => ({ route, stated })),
    );
    const [first] = all;
    const other = first && all.find(({ stated }) => !areAlike(stated, first.stated));
    if (first !== undefined && other !== undefined) return { condition, readings: [first, other] };
  }
  return undefined;
}

/** `0.050 in`, `0.05 in` and `1.27 mm` are one lift; a number without a unit is taken in that of the other. */
function areAlike(a: string, b: string): boolean {
  const [first, second] = [writtenAmount(a), writtenAmount(b)];
  if (first === undefined || second === undefined) return a === b;
  const unit = first.unit ?? second.unit;
  const [inFirst, inSecond] = [first.unit ?? unit, second.unit ?? unit];
  if (inFirst?.quantity !== inSecond?.quantity) return false;
  const amount = (each: Written, of: typeof unit): Fraction =>
    of === undefined ? each.amount : toBase(each.amount, of);
  return compare(amount(first, inFirst), amount(second, inSecond)) === 0;
}

type Written = NonNullable<ReturnType<typeof writtenAmount>>;

function writtenAmount(text: string) {
  const [, digits, name] = /^([-+]?\d*\.?\d+) ?(\D*)$/.exec(text) ?? [];
  if (digits === undefined || name === undefined) return undefined;
  const unit = name === '' ? undefined : findUnit(name, 'length');
  return name !== '' && unit === undefined ? undefined : { amount: parseDecimal(digits), unit };
}
