import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  negate,
  toNumber,
  ZERO,
} from '../quantity/fraction.ts';

/** What stands between the wrench's drive and the fastener. Lengths are from centre to centre. */
export type Adapter =
  | { readonly kind: 'straight'; readonly length: Fraction }
  /** The angle in degrees that the adapter turns away from the line of the wrench. */
  | { readonly kind: 'angled'; readonly length: Fraction; readonly angle: Fraction }
  /** Points back along the wrench, so that the lever is shorter. */
  | { readonly kind: 'shortening'; readonly length: Fraction };

export type WrenchRatio = { readonly ratio: Fraction } | { readonly problem: string };

/**
 * What the wrench reads for each unit of torque at the fastener: L / (L + A cos angle), where L is the
 * wrench's length from the hand to the drive (TM 9-254; straight: TM 1-1500-204-23-9; shortening:
 * TM 55-1945-205-24-4). Both lengths in one unit, any unit. Exact but for odd angles.
 */
export function wrenchRatio(wrenchLength: Fraction, adapter: Adapter): WrenchRatio {
  if (compare(wrenchLength, ZERO) <= 0) return { problem: 'the wrench must have a length' };
  if (compare(adapter.length, ZERO) < 0) return { problem: 'an adapter cannot have a length below nothing' };
  const reach = add(wrenchLength, forwardLength(adapter));
  if (compare(reach, ZERO) <= 0) return { problem: 'the adapter reaches back to the hand or past it' };
  return { ratio: divide(wrenchLength, reach) };
}

/** What to set the wrench to for a torque at the fastener, in the torque's own unit. */
export const wrenchSetting = (torque: Fraction, ratio: Fraction): Fraction => multiply(torque, ratio);

function forwardLength(adapter: Adapter): Fraction {
  if (adapter.kind === 'straight') return adapter.length;
  if (adapter.kind === 'shortening') return negate(adapter.length);
  return multiply(adapter.length, cosine(adapter.angle));
}

const COSINE_STEPS = 1e12;

/** To twelve places: far beyond what a wrench can be set to, and exact at 0, 60, 90, 120 and 180 degrees. */
function cosine(angle: Fraction): Fraction {
  const radians = (toNumber(angle) * Math.PI) / 180;
  return fraction(Math.round(Math.cos(radians) * COSINE_STEPS), COSINE_STEPS);
}
