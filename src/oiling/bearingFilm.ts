import type { JudgedRoute, Row } from '../checks/judge/row.ts';
import type { Engine } from '../documents/assemble.ts';
import type { Bearing } from '../film/bearing.ts';
import { pressureFedFlow } from '../film/pressureFed.ts';
import { clearancesBetween, type Spread, spreadsOver } from '../film/spread.ts';
import { type WarmFilm, warmFilm } from '../film/warmFilm.ts';
import { toNumber } from '../quantity/fraction.ts';
import type { BearingKind } from './bearingKind.ts';
import { type BearingLoad, bearingLoad } from './bearingLoad.ts';
import { inMetres } from './inSi.ts';
import type { Supply } from './supply.ts';

/** Bearings of one kind, all but their clearance. */
export interface Bearings {
  readonly kind: BearingKind;
  readonly diameter: number;
  readonly length: number;
  readonly load: BearingLoad;
  readonly supply: Supply;
}

/** Undefined, with what is lacking, where their sizes or their load are not stated. */
export function bearingsOf(
  kind: BearingKind,
  engine: Engine,
  supply: Supply,
): Bearings | { readonly lacking: readonly string[] } {
  const { sizes } = engine.document;
  const [diameter, length, load] = [
    sizes.get(kind.diameter),
    sizes.get(kind.length),
    bearingLoad(kind, engine),
  ];
  if (diameter === undefined || length === undefined || load === undefined) {
    return {
      lacking: [
        ...(diameter === undefined ? [`sizes: ${kind.diameter}`] : []),
        ...(length === undefined ? [`sizes: ${kind.length}`] : []),
        ...(load === undefined ? [`running: { load: { ${kind.load}: … } }`] : []),
      ],
    };
  }
  return { kind, diameter: inMetres(diameter.amount), length: inMetres(length.amount), load, supply };
}

/** What is reported of a film, in SI units. */
export const FIGURES = ['thickness', 'flow', 'power', 'rise'] as const;
export type Figure = (typeof FIGURES)[number];

export interface ClearanceFilm {
  /** At 20 °C, as it is measured and limited. */
  readonly clearance: number;
  /** How much more it is in the warm engine, where that is known. */
  readonly more: number;
  readonly bearing: Bearing;
  readonly warm: WarmFilm;
  readonly figures: Readonly<Record<Figure, number>>;
  /** Of the flow what the pressure drives through; undefined where none is stated. */
  readonly pressureFlow: number | undefined;
}

/** The film of one of these bearings at a clearance, in metres, and how much more that is in the warm engine. */
export function filmAt(
  { kind, diameter, length, load, supply }: Bearings,
  clearance: number,
  more: number,
): ClearanceFilm {
  const bearing = { diameter, length, clearance: clearance + more };
  const warm = warmFilm(bearing, {
    revolutions: supply.revolutions * kind.turns,
    load: load.newtons,
    viscosityAt: supply.viscosityAt,
    inlet: supply.inlet,
  });
  const { film, viscosity, rise } = warm;
  const pressureFlow =
    supply.pressure &&
    pressureFedFlow(bearing, length / 2, film.eccentricity, { pressure: supply.pressure, viscosity });
  return {
    clearance,
    more,
    bearing,
    warm,
    pressureFlow,
    figures: {
      thickness: film.thickness,
      flow: film.sideFlow + (pressureFlow ?? 0),
      power: film.power,
      rise,
    },
  };
}

/** The film of one bearing by its measured clearance, and how far it reaches over the uncertainty of that. */
export interface MeasuredFilm extends ClearanceFilm {
  readonly row: Row;
  readonly judged: JudgedRoute;
  readonly spreads: Readonly<Record<Figure, Spread>>;
}

/** Undefined where it was not measured, or is not sure to be above zero. */
export function measuredFilm(bearings: Bearings, row: Row): MeasuredFilm | undefined {
  const [judged] = row.routes;
  if (judged === undefined) return undefined;
  const more = row.hot === undefined ? 0 : inMetres(row.hot.more.amount);
  const clearance = inMetres(toNumber(judged.mean));
  const expanded = inMetres(judged.route.expanded);
  if (clearance + more - expanded <= 0) return undefined;
  const reached = clearancesBetween(clearance - expanded, clearance + expanded);
  const spreads = spreadsOver(reached, (each) => filmAt(bearings, each, more).figures);
  return { ...filmAt(bearings, clearance, more), row, judged, spreads };
}
