import type { Row } from '../../checks/judge/row.ts';
import { OPERATIONS, type Operation } from '../../documents/planning/operations.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { Cut } from './cut.ts';
import type { Decider } from './instruments.ts';
import type { Unmeasured } from './measuring/unmeasured.ts';
import type { Suspect } from './suspects.ts';
import type { Urgency } from './urgency.ts';

/** What is in doubt, and the instruments of the register to read it with once more. */
export interface ReadAgain extends Suspect {
  readonly instruments: readonly string[];
}

/** One thing to do, of one part. */
export interface Job {
  /** `grind main journals`. */
  readonly name: string;
  readonly operation: Operation;
  readonly part: Part | undefined;
  /** The one of several that it is done to, as its name says: a head of a vee. */
  readonly at?: Position;
  readonly urgency: Urgency;
  /** What asks for it, the worst first; none for what another job brings with it. */
  readonly rows: readonly Row[];
  readonly found: readonly Observation[];
  /** What is measured again since it may be a slip of the pen. */
  readonly suspects: readonly ReadAgain[];
  /** What is measured, since limits ask for it and nothing of it holds. */
  readonly unmeasured?: readonly Unmeasured[];
  /** The jobs that it serves, where nothing else asks for it. */
  readonly serves: readonly Job[] | undefined;
  readonly cut: Cut | undefined;
  /** Of a whole that is renewed and not cracked: to what its journals or bores would be cut if it were kept. */
  readonly wouldCut?: readonly Cut[];
  /** Of a head or block that is surfaced or machined: its thickness, where limits say how far it may be cut. */
  readonly thicknesses?: readonly Row[];
  /** Of what is measured again: by what it would be decided, in the order of `rows`. */
  readonly deciders: readonly (Decider | undefined)[];
  /** What has to be done or looked at because of it. */
  readonly follows: readonly string[];
}

/** What most jobs have none of. */
export const plain = {
  found: [],
  suspects: [],
  serves: undefined,
  cut: undefined,
  deciders: [],
  follows: [],
} as const;

/**
 * A head is finished from its holes outward: guides, then the seats that are cut true to them, its face last. Common practice,
 * no source.
 */
const ON_A_HEAD: readonly (readonly [Operation, string])[] = [
  ['bore', 'valve_guide_hole'],
  ['renew', 'valve_guide'],
  ['bore', 'valve_seat_hole'],
  ['renew', 'valve_seat'],
  ['surface', 'head'],
];

export const inOrderOfWork = (jobs: readonly Job[]): readonly Job[] =>
  [...jobs].sort((a, b) => turnOf(a) - turnOf(b));

/** All that is cut of a head is done when faces are. */
function turnOf({ operation, part }: Job): number {
  const step = ON_A_HEAD.findIndex(([done, id]) => done === operation && id === part?.id);
  return step < 0
    ? OPERATIONS.indexOf(operation)
    : OPERATIONS.indexOf('surface') + (step + 1) / (ON_A_HEAD.length + 1);
}
