import type { LoggedPass } from '../../documents/tightening/loggedPass.ts';
import type { MatchedPass, PlannedPass } from './passes.ts';
import type { TighteningView } from './view.ts';

/** A logged pass of the sequence, and fasteners that it concerns. */
export interface PassFasteners {
  readonly planned: PlannedPass;
  readonly logged: LoggedPass;
  readonly fasteners: readonly string[];
}

/** Of each pass that was made at all, the fasteners that no part of it reached; told of its first part. */
export const missedIn = ({ planned, matched }: TighteningView): readonly PassFasteners[] =>
  planned.flatMap((pass) => {
    const made = matched.filter((each) => each.planned === pass);
    const [first] = made;
    if (first === undefined) return [];
    const reached = new Set(made.flatMap(({ logged }) => reachedIn(logged, wantedBy(pass))));
    const fasteners = wantedBy(pass).filter((name) => !reached.has(name));
    return fasteners.length === 0 ? [] : [{ planned: pass, logged: first.logged, fasteners }];
  });

/** The passes that took fasteners once more to where the same pass had brought them already. */
export function repeatedIn({ matched }: TighteningView): readonly PassFasteners[] {
  const reached = new Map<PlannedPass, ReadonlySet<string>>();
  return matched.flatMap(({ planned, logged, outOfOrder }) => {
    if (planned === undefined) return [];
    const before = reached.get(planned) ?? new Set();
    const now = reachedIn(logged, wantedBy(planned));
    reached.set(planned, new Set([...before, ...now]));
    const fasteners = now.filter((name) => before.has(name));
    return fasteners.length === 0 || outOfOrder ? [] : [{ planned, logged, fasteners }];
  });
}

/** Every fastener that a pass of the sequence asks for. */
export const wantedBy = ({ steps }: PlannedPass): readonly string[] =>
  steps.flatMap(({ fasteners }) => fasteners);

/** With values, those that have one; else those named, else all: without those that were left out. */
function reachedIn(
  { values, fasteners, leftOut }: MatchedPass['logged'],
  wanted: readonly string[],
): readonly string[] {
  const valued = [...values].flatMap(([name, { amount }]) => (amount === undefined ? [] : [name]));
  const named = values.size > 0 ? valued : (fasteners ?? wanted);
  return named.filter((name) => !leftOut.includes(name));
}
