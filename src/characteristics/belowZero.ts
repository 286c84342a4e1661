import type { Characteristic } from './characteristic.ts';

/** What opens with wear and has nothing below it: a clearance, an end play, a gap, a runout. */
export const isGap = ({ figure, isNeverBelowZero }: Characteristic): boolean =>
  figure === 'clearance' || isNeverBelowZero === true;

/** The limits of a press fit carry below zero all the same. */
export const isNeverBelowZero = (characteristic: Characteristic): boolean =>
  characteristic.figure === 'size' || characteristic.figure === 'out of round' || isGap(characteristic);
