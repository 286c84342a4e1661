import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Grade } from '../../documents/grades/grade.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import type { InPlace } from './inPlace.ts';
import type { ShelfPiston } from './shelfPistons.ts';
import type { Wanted } from './wanted.ts';

/** Pistons chosen for all cylinders, or the sizes to which bores that are still to be bored are finished for them. */
export interface PistonFit {
  readonly clearance: Characteristic;
  readonly places: readonly PistonPlace[];
  readonly inPlace: readonly InPlace[];
  /** Bores are still to be cut: `size` is what each is finished to. */
  readonly isToBeBored: boolean;
  /** Bores that are to be renewed first: nothing is chosen for these. */
  readonly toBeRenewed: readonly Position[];
  readonly problem: PistonProblem | undefined;
}

export interface PistonPlace {
  readonly position: Position;
  readonly piston: ShelfPiston;
  /** Of the bore: as measured, or to be finished to. */
  readonly size: Fraction;
  readonly least: Fraction;
  readonly greatest: Fraction;
  readonly wanted: Wanted;
}

export type PistonProblem =
  | { readonly kind: 'no limits' | 'not measured' | 'no step' }
  | { readonly kind: 'too few'; readonly lacking: readonly Lacking[] }
  /** Where stock serves as many bores as it can, each of these is left without: this diameter would bring it to the middle. */
  | { readonly kind: 'nothing fits'; readonly ideal: readonly Ideal[] }
  /** Were it not for their weights there would be a set. */
  | { readonly kind: 'of no one weight'; readonly spread: Fraction };

/** Pistons of one size of which there are too few. */
export interface Lacking {
  readonly size: Grade;
  readonly needed: number;
  readonly free: number;
}

export interface Ideal {
  readonly position: Position;
  readonly diameter: Fraction;
}

/** Bores for which pistons are to be chosen. */
export interface Asked {
  readonly bore: Part;
  readonly fit: Characteristic;
  readonly places: readonly AskedBore[];
  readonly toBeRenewed: readonly Position[];
}

export interface AskedBore {
  readonly position: Position;
  readonly aim: Wanted;
}
