import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Grid, Measured } from '../../characteristics/grid.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import type { Warmth } from '../../measurement/temperature.ts';
import type { Value } from '../../measurement/value.ts';
import type { Fraction } from '../../quantity/fraction.ts';

/** One way in which a session gives a characteristic at a position. */
export interface Route {
  /** `read directly`, or a derivation's name. */
  readonly name: string;
  readonly with: readonly string[];
  readonly grid: Grid;
  readonly measured: Measured;
  /** The end of what was measured that is the less certain: its uncertainty counts for both. */
  readonly worse: Value;
  /** The instruments behind it that are not registered: their errors are assumed. */
  readonly assumed: readonly Instrument[];
  /** Combined standard uncertainty, its degrees of freedom, and expanded to 95 %. */
  readonly u: number;
  readonly dof: number;
  readonly expanded: number;
  /** As typed; empty for a derived value. */
  readonly written: readonly string[];
  /** One step of the finest digit that stands behind it, in the base unit. */
  readonly lastDigit: Fraction;
  /** Where the reading, or the first reading that it comes from, stands. */
  readonly place: Place;
  /** The routes of the readings that a derived value comes from. */
  readonly inputs: readonly Route[];
  readonly block: ReadingBlock | undefined;
  /** Of a reading at a known temperature: which it was, and which it was taken to. */
  readonly warmth: Warmth | undefined;
  /** What a reading was put right by, as is known of its instruments; of several points the first. */
  readonly putRightBy: Fraction | undefined;
  readonly notes: readonly string[];
  readonly characteristic: Characteristic;
  readonly position: Position;
  /** The day of a reading; empty for a derived value. */
  readonly takenOn: string;
  /** The session in which it was read; of a derived value the latest of those that its readings come from. */
  readonly readIn: SessionDocument;
  /** The date of the earlier session that it stands in from. */
  readonly takenFrom: string | undefined;
}

/** The readings themselves that a value comes from. */
export const leavesOf = (route: Route): readonly Route[] =>
  route.inputs.length === 0 ? [route] : route.inputs.flatMap(leavesOf);
