import type { Place } from '../diagnostic/place.ts';
import type { Dimension } from '../documents/grades/movement.ts';
import type { Measure, Measures } from '../documents/measure.ts';
import type { FormulaProblem } from '../formula/problem.ts';
import type { Layout } from '../layout/layout.ts';
import type { Part } from '../layout/part.ts';
import type { Position } from '../layout/position.ts';
import { relateOne } from '../layout/relate.ts';
import { BY_EYE, type ByEye, type InstrumentType } from '../measurement/instrument.ts';
import type { Fraction } from '../quantity/fraction.ts';
import type { Grid, Measured } from './grid.ts';

/** How a value at a position comes from others there. */
export interface Derivation {
  /** The route in trade words, such as `bearing bore − journal`. */
  readonly route: string;
  /** Characteristics it needs. */
  readonly inputs: readonly string[];
  /**
   * Where they lie for a position, in the order in which `compute` takes them; undefined where it has no value there.
   * Without it each input lies at the one position that belongs to it.
   */
  readonly places?: (layout: Layout, position: Position) => readonly InputPlace[] | undefined;
  /** Undefined where the readings do not give it, such as a taper from one station. */
  readonly compute: Compute<Measured>;
  /** Of a shop's own formula: why the numbers give nothing, undefined where they do. */
  readonly problem?: Compute<FormulaProblem>;
}

type Compute<T> = (
  inputs: readonly Grid[],
  choice: DerivationChoice,
  places?: readonly InputPlace[],
) => T | undefined;

/** One value that a derivation needs. */
export interface InputPlace {
  readonly id: string;
  readonly position: Position;
  /** In a formula what it stands for, such as `liner_protrusion[*]`. */
  readonly reference?: string;
}

/** Where the inputs of a derivation lie for a position; undefined where one of them lies nowhere. */
export function placesOf(
  derivation: Derivation,
  measures: Measures,
  layout: Layout,
  position: Position,
): readonly InputPlace[] | undefined {
  if (derivation.places !== undefined) return derivation.places(layout, position);
  const places = derivation.inputs.flatMap((id) => {
    const family = measures.find(id)?.family;
    const at = family && relateOne(layout, position, family);
    return at === undefined ? [] : [{ id, position: at }];
  });
  return places.length < derivation.inputs.length ? undefined : places;
}

/** What a limit says of how its characteristic is to be worked out. */
export interface DerivationChoice {
  readonly by?: 'ends' | 'range' | undefined;
  /** A taper for this length of the part, in the base unit. */
  readonly per?: Fraction | undefined;
  /** Nominal sizes, in the base unit: a shop's own formula may name them. */
  readonly sizes?: ReadonlyMap<string, Fraction>;
}

export interface Characteristic extends Measure {
  /** In trade words, as tables are headed. */
  readonly label: string;
  /** One sentence: what it is and how it is taken. */
  readonly description: string;
  /** Keys of `conditions:` that it depends on, such as the orifice of a leak-down. */
  readonly under?: readonly string[];
  /** What is easily misread in its values. */
  readonly note?: string;
  /** What to mind while it is read: it stands beside its place on the sheet. */
  readonly atTheBench?: string;
  /** What can hurt a person who measures it; the maker's manual and the rules of the place come first. */
  readonly caution?: string;
  /** As a person would write it on the sheet. */
  readonly formula: string;
  readonly derivations: readonly Derivation[];
  /** What it is usually measured with: what is assumed where a reading names no instrument. */
  readonly usual: InstrumentType | ByEye;
  /** The id of the part that it is a figure of; a shop need not say it of its own. */
  readonly of: string | undefined;
  /** Ids of the other parts that it depends on: what is done to one of them changes it. */
  readonly dependsOn: readonly string[];
  /** The part whose material it expands with, where that is not the part it is of: a bore with shells in. */
  readonly expandsWith?: string;
  /** As a shop's `grids` name the way it is gone over, and the words of the trade for that way. */
  readonly grid?: string;
  readonly usualGrid?: UsualGrid;
  /** Another size of the engine document that is its nominal size: a cylinder's and a piston's is `bore`. */
  readonly nominal?: string;
  /** What it is of its part, where the part's service size moves it. */
  readonly dimension?: Dimension;
  /** A figure of parts put together, such as end play: it ends when they are taken apart, where a size stays. */
  readonly isAssemblyFigure?: true;
  /** What the engine shows as a whole, of which the cause lies in its parts: no part has it as a figure of its own. */
  readonly isSymptom?: true;
  /** No reading of it is below zero, as of a runout; sizes, clearances and out of round say so by what they are. */
  readonly isNeverBelowZero?: true;
  /** A clearance of parts that some engines have pressed together: where no limit says, below zero is a press fit. */
  readonly mayBePressed?: true;
  /** Machining takes from it: what lies above its least limit may still be cut. */
  readonly isCutDown?: true;
  /** What to call a value above the greatest and below the least. */
  readonly words: { readonly above: string; readonly below: string };
  /** Where the definition comes from. */
  readonly source: string;
  /** Worked out only where a limit asks for it: nobody wants a row of tapers that nothing limits. */
  readonly onlyWithLimits?: boolean;
  /** What a person measures just before it; what does not say comes in the order of the registry. */
  readonly after?: string;
  /** A shop's own under the id of a built-in one: where the shop states it. */
  readonly standsForOurs?: Place;
  readonly examples: readonly WorkedExample[];
}

/** A test is passed or not, and what is counted is counted: no error of an instrument is assumed. */
export const isExact = ({ quantity, usual }: Pick<Characteristic, 'quantity' | 'usual'>): boolean =>
  usual === BY_EYE || quantity === 'count' || quantity === 'pass or fail';

/** Rows along a part, columns round it. */
export interface UsualGrid {
  readonly stations: readonly string[];
  readonly directions: readonly string[];
}

/** A sum worked on paper: each is a test, and `explain` shows it. */
export interface WorkedExample {
  /** Of its readings, where they say none of their own. */
  readonly unit: string;
  /** Of the result, where it is another. */
  readonly resultUnit?: string;
  /** Readings by characteristic, as they would be written: a number, a list of positions or a list of rows. */
  readonly given: Readonly<Record<string, ExampleReading>>;
  readonly least: string;
  readonly greatest: string;
  readonly source: string;
}

export type ExampleReading =
  | string
  /** One at each position that it is worked out over. */
  | readonly string[]
  | {
      readonly stations?: readonly string[];
      readonly directions?: readonly string[];
      readonly rows: readonly (readonly string[])[];
    };

/** What the program knows by itself; a test may give it other names. */
export interface BuiltIn {
  readonly characteristics: readonly Characteristic[];
  readonly parts: readonly Part[];
}
