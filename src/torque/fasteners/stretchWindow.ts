import { compare, type Fraction, toNumber } from '../../quantity/fraction.ts';
import type { AmountRange } from '../sequence.ts';
import { loadOfStretchN, type Section } from './stretch.ts';

export type WindowSide = 'below' | 'inside' | 'above';

/** A torque and a stretch read together, each against its own window. */
export interface TorqueAndStretch {
  readonly torque: WindowSide;
  readonly stretch: WindowSide;
  /**
   * `replace`: the windows contradict each other on this fastener, it reached one far from the other.
   * `beyond`: one was passed after the other was met. `not yet`: go on tightening.
   */
  readonly verdict: 'inside' | 'not yet' | 'beyond' | 'replace';
}

/**
 * Torque and stretch together, as TM 9-2815-220-24 WP 0139 has it: replace the stud if it passes the greatest
 * stretch before the least torque, or reaches the greatest torque before the least stretch.
 */
export function judgeTorqueAndStretch(
  windows: { readonly torque: AmountRange; readonly stretch: AmountRange },
  read: { readonly torque: Fraction; readonly stretch: Fraction },
): TorqueAndStretch {
  const torque = sideOf(read.torque, windows.torque);
  const stretch = sideOf(read.stretch, windows.stretch);
  const torqueSpent = compare(read.torque, windows.torque.greatest) >= 0;
  return { torque, stretch, verdict: verdictOf(torque, stretch, torqueSpent) };
}

function verdictOf(
  torque: WindowSide,
  stretch: WindowSide,
  torqueSpent: boolean,
): TorqueAndStretch['verdict'] {
  if (stretch === 'above' && torque === 'below') return 'replace';
  if (stretch === 'below' && torqueSpent) return 'replace';
  if (torque === 'above' || stretch === 'above') return 'beyond';
  return torque === 'inside' && stretch === 'inside' ? 'inside' : 'not yet';
}

export function sideOf(amount: Fraction, window: AmountRange): WindowSide {
  if (compare(amount, window.least) < 0) return 'below';
  return compare(amount, window.greatest) > 0 ? 'above' : 'inside';
}

/** The nut factors that a bolt would need for a torque and a stretch window to be met together. */
export interface NeededNutFactor {
  readonly least: number;
  readonly greatest: number;
  /** No friction met in a shop brings the two together: one of the windows must be wrong. */
  readonly contradicts: boolean;
}

/** From specially greased to dry and black, with some room (nut factors from memory, Shigley table 8-15). */
const LIKELY = { least: 0.08, greatest: 0.35 };
const METRES_IN_A_LENGTH_STEP = 1e-10;

/** Whether a torque window and a stretch window can hold for one bolt: K = T / (d F), F from the stretch. */
export function nutFactorNeeded(
  windows: { readonly torque: AmountRange; readonly stretch: AmountRange },
  bolt: { readonly diameterM: number; readonly sections: readonly Section[]; readonly modulusPa?: number },
): NeededNutFactor {
  const factor = (torque: Fraction, stretch: Fraction): number => {
    const stretchM = toNumber(stretch) * METRES_IN_A_LENGTH_STEP;
    return toNumber(torque) / (bolt.diameterM * loadOfStretchN(stretchM, bolt.sections, bolt.modulusPa));
  };
  const least = factor(windows.torque.least, windows.stretch.greatest);
  const greatest = factor(windows.torque.greatest, windows.stretch.least);
  return { least, greatest, contradicts: least > LIKELY.greatest || greatest < LIKELY.least };
}
