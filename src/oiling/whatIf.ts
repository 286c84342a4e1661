import type { Row } from '../checks/judge/row.ts';
import { SIDES } from '../checks/judge/sideLimit.ts';
import { BAND_NAMES, type BandName } from '../documents/limits/bands.ts';
import { clearancesBetween } from '../film/spread.ts';
import { type Bearings, type ClearanceFilm, filmAt, type MeasuredFilm } from './bearingFilm.ts';
import type { KindFilms } from './engineFilms.ts';
import { inMetres } from './inSi.ts';

/** The films of one kind of bearing over a range of clearances, in metres. */
export interface WhatIf {
  readonly kind: KindFilms;
  readonly bearings: Bearings;
  readonly films: readonly ClearanceFilm[];
  readonly limits: readonly ClearanceLimit[];
  /** Measured clearances inside the range, where there are any. */
  readonly measured: readonly MeasuredFilm[];
}

export interface ClearanceLimit {
  readonly band: BandName;
  readonly side: 'min' | 'max';
  readonly clearance: number;
  readonly positions: number;
}

/** Enough for a smooth curve in a terminal. */
const STEPS = 128;

export function whatIf(kind: KindFilms, bearings: Bearings, from: number, to: number): WhatIf {
  const isInside = (clearance: number): boolean => clearance >= from && clearance <= to;
  return {
    kind,
    bearings,
    films: clearancesBetween(from, to, STEPS).map((each) =>
      filmAt(bearings, each, kind.films[0]?.now.more ?? 0),
    ),
    limits: limitsOf(kind.films.map(({ now }) => now.row)).filter(({ clearance }) => isInside(clearance)),
    measured: kind.films.map(({ now }) => now).filter(({ clearance }) => isInside(clearance)),
  };
}

/** Every limit that holds at any of the positions, each once, by growing clearance. */
function limitsOf(rows: readonly Row[]): readonly ClearanceLimit[] {
  const limits = new Map<string, ClearanceLimit>();
  for (const { limits: of } of rows) {
    for (const band of BAND_NAMES) {
      for (const side of SIDES) {
        const limit = of.bands[band]?.[side];
        if (limit === undefined) continue;
        const clearance = inMetres(limit.amount);
        const key = `${band} ${side} ${clearance}`;
        const positions = (limits.get(key)?.positions ?? 0) + 1;
        limits.set(key, { band, side, clearance, positions });
      }
    }
  }
  return [...limits.values()].sort((a, b) => a.clearance - b.clearance);
}
