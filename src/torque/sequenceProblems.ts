import { compare, type Fraction, fraction, ZERO } from '../quantity/fraction.ts';
import {
  type Action,
  type AmountRange,
  fastenersOf,
  finalTorques,
  isShare,
  type Pass,
  type Sequence,
} from './sequence.ts';

/** Something that keeps a sequence from being carried out as written. */
export interface SequenceProblem {
  readonly message: string;
  /** Counted from 1; absent when it is not about one pass. */
  readonly pass?: number;
  /** The fastener or group it is about. */
  readonly fastener?: string;
}

/** Everything that is wrong, in the order of the document: fasteners, groups, order, passes. */
export function sequenceProblems(sequence: Sequence): readonly SequenceProblem[] {
  const known = new Set(sequence.fasteners);
  const finals = finalTorques(sequence);
  return [
    ...repeated(sequence.fasteners, 'is named twice among the fasteners'),
    ...groupProblems(sequence.groups, known),
    ...orderProblems(sequence, known),
    ...(sequence.final === undefined ? [] : spanProblems('the final torque', sequence.final)),
    ...sequence.passes.flatMap((pass, index) =>
      passProblems(pass, index + 1, sequence, known, finals).map((problem) => ({
        ...problem,
        pass: index + 1,
      })),
    ),
  ];
}

function groupProblems(groups: Sequence['groups'], known: ReadonlySet<string>): readonly SequenceProblem[] {
  return [...groups].flatMap(([group, members]) => [
    ...(known.has(group) ? [about(group, 'is both a fastener and a group')] : []),
    ...members
      .filter((name) => !known.has(name))
      .map((name) => about(name, `of group ${group} is no fastener of this joint`)),
  ]);
}

function orderProblems(
  { order, fasteners }: Sequence,
  known: ReadonlySet<string>,
): readonly SequenceProblem[] {
  const inOrder = new Set(order);
  return [
    ...repeated(order, 'is named twice in the order'),
    ...order
      .filter((name) => !known.has(name))
      .map((name) => about(name, 'in the order is no fastener of this joint')),
    ...fasteners.filter((name) => !inOrder.has(name)).map((name) => about(name, 'is missing from the order')),
  ];
}

function passProblems(
  pass: Pass,
  number: number,
  sequence: Sequence,
  known: ReadonlySet<string>,
  finals: ReadonlyMap<string, AmountRange>,
): readonly SequenceProblem[] {
  const taken = fastenersOf(pass, sequence);
  const unknown = (pass.fasteners ?? []).filter((name) => !sequence.groups.has(name) && !known.has(name));
  const withoutFinal = isPercentage(pass.action) ? taken.filter((name) => !finals.has(name)) : [];
  return [
    ...unknown.map((name) => about(name, 'is no fastener or group of this joint')),
    ...(taken.length === 0 ? [{ message: 'this pass tightens nothing' }] : []),
    ...actionProblems(pass.action),
    ...withoutFinal.map((name) =>
      about(name, `has no final torque for pass ${number} to take a percentage of`),
    ),
  ];
}

const isPercentage = (action: Action): boolean =>
  (action.kind === 'to' || action.kind === 'check') && isShare(action.torque);

function actionProblems(action: Action): readonly SequenceProblem[] {
  switch (action.kind) {
    case 'to':
      return torqueProblems(action.torque);
    case 'turn':
      return spanProblems('the angle', action.angle);
    case 'loosen':
      return action.angle === undefined ? [] : spanProblems('the angle', action.angle);
    case 'stretch': {
      const torque = action.torque === undefined ? [] : spanProblems('the torque', action.torque);
      return [...spanProblems('the stretch', action.stretch), ...torque];
    }
    case 'check':
      return [...torqueProblems(action.torque), ...checkProblems(action)];
  }
}

function torqueProblems(torque: AmountRange | { readonly percent: Fraction }): readonly SequenceProblem[] {
  if (!isShare(torque)) return spanProblems('the torque', torque);
  const { percent } = torque;
  const inside = compare(percent, ZERO) > 0 && compare(percent, fraction(100)) <= 0;
  return inside ? [] : [{ message: 'a percentage of the final torque lies above 0 and up to 100' }];
}

function checkProblems(action: Action & { readonly kind: 'check' }): readonly SequenceProblem[] {
  const { torque, atMost } = action;
  if (atMost === undefined || isShare(torque) || compare(torque.greatest, atMost) <= 0) return [];
  return [{ message: 'the check torque is above the most it may be' }];
}

function spanProblems(what: string, { least, greatest }: AmountRange): readonly SequenceProblem[] {
  if (compare(least, ZERO) <= 0) return [{ message: `${what} must be more than nothing` }];
  return compare(least, greatest) > 0 ? [{ message: `${what} has its least above its greatest` }] : [];
}

const about = (fastener: string, what: string): SequenceProblem => ({
  fastener,
  message: `${fastener} ${what}`,
});

function repeated(names: readonly string[], what: string): readonly SequenceProblem[] {
  const seen = new Set<string>();
  return names.filter((name) => seen.size === seen.add(name).size).map((name) => about(name, what));
}
