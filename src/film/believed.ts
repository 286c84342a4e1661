import { type Bearing, type Duty, type Film, lengthRatio } from './bearing.ts';
import { chartFor } from './chart.ts';
import { finiteBearing } from './finiteBearing.ts';
import { shortBearing } from './shortBearing.ts';

/** What a film is doubtful for. */
export type FilmDoubt =
  /** Thinner than any that is tabled: the charts only go on as they end. */
  | 'beyond the charts'
  /** By the short theory, at an eccentricity at which it is known to be off. */
  | 'short theory off';

export interface BelievedFilm {
  readonly film: Film;
  readonly theory: 'finite' | 'short';
  readonly doubts: readonly FilmDoubt[];
  /** What the other theory says. */
  readonly other: Film | undefined;
}

/** Up to it the short theory's Sommerfeld number lies within 7 % of the charts of a quarter-length bearing; beyond, 14 to 28 % off. */
export const SHORT_HOLDS_UP_TO = 0.6;

/**
 * The charts wherever they reach, and the theory of short bearings for a bearing that is shorter. Where both have an answer
 * the charts are nearer: of looser bearings the short theory promises thicker films, where a finite one has thinner ones.
 */
export function believedFilm(bearing: Bearing, duty: Duty): BelievedFilm {
  const [finite, short] = [finiteBearing(bearing, duty), shortBearing(bearing, duty)];
  if (finite === undefined) {
    const isOff = short.eccentricity > SHORT_HOLDS_UP_TO;
    return { film: short, theory: 'short', doubts: isOff ? ['short theory off'] : [], other: undefined };
  }
  const thinnest = chartFor(lengthRatio(bearing))?.thinnest ?? 0;
  const isBeyond = 1 - finite.eccentricity < thinnest;
  return { film: finite, theory: 'finite', doubts: isBeyond ? ['beyond the charts'] : [], other: short };
}

/** The same film alone: whoever looks for one tries many, and asks what the last is doubtful for. */
export const likelyFilm = (bearing: Bearing, duty: Duty): Film =>
  finiteBearing(bearing, duty) ?? shortBearing(bearing, duty);
