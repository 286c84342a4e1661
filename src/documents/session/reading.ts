import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import type { Range } from '../../measurement/value.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import type { Amount } from '../amount.ts';
import type { Measure } from '../measure.ts';
import type { Named } from '../yaml/access.ts';
import type { Span } from '../yaml/node.ts';

/** A place along a part at which it is measured, and how far along where that was written. */
export interface Station {
  readonly name?: string;
  readonly distance?: Fraction;
}

/** One point measured. */
export interface Point {
  /** In the base unit, exact; a gauge's deviation is already added to its master, repeats are their mean. */
  readonly amount: Fraction;
  /** As typed, with the unit where one was typed. */
  readonly written: string;
  readonly lastDigit: Fraction;
  /** Of a reading that was given as a range. */
  readonly range?: Range;
  /** The single readings where one point was read several times. */
  readonly repeats?: readonly Fraction[];
  /** Put right already, with `was:`: a slip that was found is not looked for again. */
  readonly settled?: true;
  /** Where in the file, as a pointer that no other reading has. */
  readonly pointer: string;
  readonly span: Span;
}

/** What was read at one position: rows are stations along the part, columns directions round it. */
export interface PositionReading {
  readonly position: Position;
  readonly stations: readonly Station[];
  readonly directions: readonly (string | undefined)[];
  /** As long as stations, each as long as directions; undefined where no reading was taken. */
  readonly rows: readonly (readonly (Point | undefined)[])[];
  readonly notes: readonly string[];
  readonly span: Span;
}

/** The readings of one characteristic, taken together with one instrument. */
export interface ReadingBlock {
  readonly index: number;
  readonly measure: Measure;
  readonly instrument: Named | undefined;
  /** The instrument or master with which the gauge was set. */
  readonly setWith: Named | undefined;
  /** Zeroed in something of a known size (base unit), or in a micrometer locked at each journal. */
  readonly setTo: Fraction | 'journal' | undefined;
  /** The machine shop whose figures these are, where we did not read them ourselves. */
  readonly from: string | undefined;
  /** Where they differ from the session's. */
  readonly date: string | undefined;
  readonly temperature: Amount | undefined;
  /** Where the part lay in its supports, and so was not measured. */
  readonly supportedOn: readonly Position[];
  readonly conditions: ReadonlyMap<string, string>;
  readonly positions: readonly PositionReading[];
  readonly span: Span;
}

/** Work on a part: what was read of it before steps back. */
export interface WorkDone {
  readonly index: number;
  readonly work: string;
  readonly on: Named;
  readonly parts: readonly PartAt[];
}

/** In loops, since every check asks for them: this way takes a fifth of the time. */
export function pointsOf({ rows }: PositionReading): readonly Point[] {
  const points: Point[] = [];
  for (const row of rows) {
    for (const point of row) if (point !== undefined) points.push(point);
  }
  return points;
}

/** An amount as it is read off: moved to its master, and kept with its digits. */
export type ReadAmount = (text: string, span: Span) => Amount | undefined;
