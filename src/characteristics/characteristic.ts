import type { Dimension } from '../documents/grades/movement.ts';
import type { Measure } from '../documents/measure.ts';
import type { FormulaProblem } from '../formula/problem.ts';
import type { Part } from '../layout/part.ts';
import type { InstrumentType } from '../measurement/instrument.ts';
import type { Fraction } from '../quantity/fraction.ts';
import type { Grid, Measured } from './grid.ts';

/** How a value at a position comes from others there. */
export interface Derivation {
  /** The route in trade words, such as `bearing bore − journal`. */
  readonly route: string;
  /** Characteristics it needs, in the order in which `compute` takes them. */
  readonly inputs: readonly string[];
  /** Undefined where the readings do not give it, such as a taper from one station. */
  readonly compute: (inputs: readonly Grid[], choice: DerivationChoice) => Measured | undefined;
  /** Of a shop's own formula: why the numbers give nothing, undefined where they do. */
  readonly problem?: (inputs: readonly Grid[], choice: DerivationChoice) => FormulaProblem | undefined;
}

/** What a limit says of how its characteristic is to be worked out. */
export interface DerivationChoice {
  readonly by?: 'ends' | 'range';
  /** A taper for this length of the part, in the base unit. */
  readonly per?: Fraction;
  /** Nominal sizes, in the base unit: a shop's own formula may name them. */
  readonly sizes?: ReadonlyMap<string, Fraction>;
}

export interface Characteristic extends Measure {
  /** In trade words, as tables are headed. */
  readonly label: string;
  /** One sentence: what it is and how it is taken. */
  readonly description: string;
  /** What is easily misread in its values. */
  readonly note?: string;
  /** As a person would write it on the sheet. */
  readonly formula: string;
  readonly derivations: readonly Derivation[];
  /** What it is usually measured with: what is assumed where a reading names no instrument. */
  readonly usual: InstrumentType;
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
  /** Which part's service size moves it, and what it is of that part. */
  readonly graded?: Graded;
  /** What to call a value above the greatest and below the least. */
  readonly words: { readonly above: string; readonly below: string };
  /** Where the definition comes from. */
  readonly source: string;
  /** Worked out only where a limit asks for it: nobody wants a row of tapers that nothing limits. */
  readonly onlyWithLimits?: boolean;
  readonly examples: readonly WorkedExample[];
}

/** Rows along a part, columns round it. */
export interface UsualGrid {
  readonly stations: readonly string[];
  readonly directions: readonly string[];
}

export interface Graded {
  readonly part: string;
  readonly dimension: Dimension;
}

/** A sum worked on paper: each is a test, and `explain` shows it. */
export interface WorkedExample {
  readonly unit: string;
  /** Readings by characteristic, as they would be written: a number, a list or a list of rows. */
  readonly given: Readonly<Record<string, ExampleReading>>;
  readonly least: string;
  readonly greatest: string;
  readonly source: string;
}

export type ExampleReading =
  | string
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
