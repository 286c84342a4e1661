import { type Fraction, toNumber } from '../../quantity/fraction.ts';

/** In whole hours; nothing where nobody said. */
export const hoursText = (hours: Fraction | undefined): string =>
  hours === undefined ? '' : String(Math.round(toNumber(hours)));
