import type { Fraction } from '../quantity/fraction.ts';
import type { Unit } from '../quantity/units.ts';
import type { Adapter } from './adapter.ts';
import type { TighteningSituation } from './cautions.ts';
import type { Friction } from './fasteners/friction.ts';
import type { Strength } from './fasteners/grades.ts';
import type { Lubrication } from './fasteners/lubrication.ts';
import type { Section } from './fasteners/stretch.ts';
import type { Thread } from './fasteners/threadForm.ts';
import type { Layout, Position } from './order/layouts.ts';
import type { PlanStep } from './plan.ts';
import type { Sequence } from './sequence.ts';

/** Where the fasteners stand, and what kind of joint that makes. */
export interface Places {
  readonly kind: Layout['kind'];
  readonly positions: readonly Position[];
}

/** A joint as a torque document describes it: how it is tightened, and with what. */
export interface Joint {
  readonly sequence: Sequence;
  readonly steps: readonly PlanStep[];
  /** Written down, made from positions, or none: then as the fasteners are listed. */
  readonly orderFrom: 'maker' | 'generated' | 'listed';
  /** Written, or read from names such as 3L and B2; undefined where nothing says. */
  readonly places: Places | undefined;
  readonly reuse: TighteningSituation['reuse'];
  readonly lubricant: string | undefined;
  /** What the lubricant comes to, or the nut factor that the document states. */
  readonly lubrication: Lubrication;
  readonly friction: Friction | undefined;
  readonly thread: Thread | undefined;
  /** As written: `8`, `10.9`, or what a fastener maker calls its own. */
  readonly grade: string | undefined;
  readonly strength: Strength | undefined;
  /** Why a clamp load, or its share of proof, cannot be estimated. */
  readonly lacking: readonly string[];
  readonly sections: readonly Section[];
  readonly wrenchLength: Fraction | undefined;
  readonly adapter: Adapter | undefined;
  readonly runOn: Fraction | undefined;
  /** The unit that the document writes its torques and its lengths in. */
  readonly torqueUnit: Unit;
  readonly lengthUnit: Unit;
  readonly source: string;
  readonly note: string | undefined;
}
