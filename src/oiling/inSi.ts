import type { Amount } from '../documents/amount.ts';
import { type Fraction, toNumber } from '../quantity/fraction.ts';

// From the base units of quantities to those of the SI, in which films are worked out.

const BASE_LENGTHS_A_METRE = 1e10;
export const inMetres = (length: Fraction | number): number =>
  (typeof length === 'number' ? length : toNumber(length)) / BASE_LENGTHS_A_METRE;
export const lengthFrom = (metres: number): number => metres * BASE_LENGTHS_A_METRE;

export const inNewtons = ({ amount }: Amount): number => toNumber(amount);
export const inPascals = ({ amount }: Amount): number => toNumber(amount) * 1000;
export const inKilograms = ({ amount }: Amount): number => toNumber(amount) / 1000;
export const inRevolutionsASecond = ({ amount }: Amount): number => toNumber(amount) / 60;
export const inLitresAMinute = (cubicMetresASecond: number): number => cubicMetresASecond * 60_000;
