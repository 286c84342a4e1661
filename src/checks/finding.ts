import { comparePlaces, compareText, type Place } from '../diagnostic/place.ts';
import type { Position } from '../layout/position.ts';

export const SEVERITIES = ['error', 'warning', 'remark'] as const;

export type Severity = (typeof SEVERITIES)[number];

/** One kind of finding, defined beside the check that makes it. Its code is public; the wording of messages may change. */
export interface FindingKind {
  /** `area/what`. */
  readonly code: string;
  readonly severity: Severity;
  /** What it means, in a sentence or two. */
  readonly means: string;
  /** Why it matters. */
  readonly matters: string;
  /** What people usually do about it. */
  readonly usually: string;
  /** A message as it is printed, from the golden case of the code. */
  readonly example: string;
}

/** A problem with the engine, or with how it was measured; never with a document. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  /** With the numbers in it. */
  readonly message: string;
  /** Where it is not all of the message: what was found, without what follows from it or what to do. */
  readonly fact?: string;
  readonly measure: string | undefined;
  /** As it is printed: of readings the name of the position, of a joint the fastener. */
  readonly position: string | undefined;
  readonly at: Position | undefined;
  readonly place: Place;
  readonly limitPlace: Place | undefined;
  /** The readings that one cause has made wrong: what else is said of them follows from it. */
  readonly covers?: readonly Reading[];
  /** Of a reading that ended because its joint was tightened in another way: what to measure again, and why. */
  readonly again?: string;
  /** Of a warning that somebody accepted by name. */
  readonly isAccepted?: boolean;
  /** Whether the run was told of it before it began; undefined where it was told of nothing. */
  readonly known?: boolean;
}

/** A characteristic at a position. */
export interface Reading {
  readonly measure: string;
  readonly at: Position;
}

export const finding = (
  kind: FindingKind,
  place: Place,
  message: string,
  about: {
    readonly measure?: string;
    readonly position?: Position;
    readonly fastener?: string;
    readonly limitPlace?: Place | undefined;
    readonly severity?: Severity;
    readonly covers?: readonly Reading[];
  } = {},
): Finding => ({
  code: kind.code,
  severity: about.severity ?? kind.severity,
  message,
  measure: about.measure,
  position: about.position?.name ?? about.fastener,
  at: about.position,
  place,
  limitPlace: about.limitPlace,
  ...(about.covers === undefined ? {} : { covers: about.covers }),
});

/** Whether one of these findings is about this reading, alone or among others. */
export const isCovered = (measure: string, at: Position | undefined, by: readonly Finding[]): boolean =>
  by.some(({ covers = [] }) => covers.some((each) => each.measure === measure && each.at === at));

const WEIGHT: Readonly<Record<Severity, number>> = { error: 0, warning: 1, remark: 2 };

/** The worst first, then in reading order. */
export const sortFindings = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) =>
      WEIGHT[a.severity] - WEIGHT[b.severity] ||
      comparePlaces({ ...a.place, column: 0 }, { ...b.place, column: 0 }) ||
      compareText(a.code, b.code) ||
      a.place.column - b.place.column,
  );
