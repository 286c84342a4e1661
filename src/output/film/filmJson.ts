import { lengthRatio } from '../../film/bearing.ts';
import { trumplerThickness } from '../../film/designCriteria.ts';
import type { Spread } from '../../film/spread.ts';
import type { ClearanceFilm, MeasuredFilm } from '../../oiling/bearingFilm.ts';
import type { FilmThenAndNow, KindFilms } from '../../oiling/engineFilms.ts';
import { inLitresAMinute } from '../../oiling/inSi.ts';
import { assumptionsOf } from '../../oiling/supply.ts';
import type { WhatIf } from '../../oiling/whatIf.ts';
import { VERSION } from '../../version.ts';
import { shortened } from '../check/rowJson.ts';
import { type NamedCommit, revisionJson } from '../diff/revision.ts';
import { positionJson } from '../positionJson.ts';
import type { ToldFilms } from './filmText.ts';
import { CAUTION } from './filmWords.ts';

export interface FilmOrigin {
  readonly at: NamedCommit | undefined;
  readonly exit: 0 | 2;
  readonly whatIf: WhatIf | undefined;
}

/** What `tenths film --format json` prints: lengths in mm and µm, flows in L/min, the rest in SI units. */
export const filmJson = (reported: ToldFilms, { at, exit, whatIf }: FilmOrigin) => ({
  format: 'tenths.film',
  version: 1,
  tool: { name: 'tenths', version: VERSION },
  exit,
  at: revisionJson(at),
  engine: { path: reported.engine.folder, name: reported.engine.document.name },
  speed_rpm: shortened(reported.supply.revolutions * 60),
  oil: reported.engine.document.oil?.name ?? null,
  inlet_degC: reported.supply.inlet,
  supply_kPa: reported.supply.pressure === undefined ? null : shortened(reported.supply.pressure / 1000),
  bearings: reported.kinds.map(kindJson),
  what_if:
    whatIf === undefined
      ? null
      : {
          measure: whatIf.kind.kind.measure,
          limits: whatIf.limits.map(({ band, side, clearance }) => ({
            band,
            side,
            clearance_mm: millimetres(clearance),
          })),
          films: whatIf.films.map((film) => ({
            clearance_mm: millimetres(film.clearance),
            ...figuresJson(film),
          })),
        },
  demand: demandJson(reported),
  assumed: assumptionsOf(reported.engine),
  caution: CAUTION,
});

function demandJson({ demand, delivery }: ToldFilms) {
  if (demand === undefined) return null;
  const { flow, least, greatest, most, count } = demand;
  return {
    bearings: count,
    oil_L_min: spreadJson(flow, { least, greatest }, inLitresAMinute),
    most: { measure: most.row.characteristic.id, ...positionJson(most.row.position) },
    pump_L_min: delivery === undefined ? null : shortened(inLitresAMinute(delivery)),
  };
}

const kindJson = ({ kind, bearings, films }: KindFilms) => ({
  measure: kind.measure,
  lacking: 'lacking' in bearings ? bearings.lacking : [],
  diameter_mm: 'lacking' in bearings ? null : millimetres(bearings.diameter),
  length_mm: 'lacking' in bearings ? null : millimetres(bearings.length),
  load_N: 'lacking' in bearings ? null : shortened(bearings.load.newtons),
  load_from: 'lacking' in bearings ? null : bearings.load.from,
  films: films.map(thenAndNowJson),
});

const thenAndNowJson = ({ now, before }: FilmThenAndNow) => ({
  ...positionJson(now.row.position),
  verdict: now.row.judgement.verdict,
  ...measuredJson(now),
  before: before === undefined ? null : { date: before.date, ...measuredJson(before.film) },
});

const measuredJson = (film: MeasuredFilm) => ({
  clearance_mm: millimetres(film.clearance),
  clearance_U_mm: shortened(film.judged.route.expanded / MILLIMETRE),
  warmer_by_mm: millimetres(film.more),
  ...figuresJson(film),
  spread: {
    film_um: spreadOnly(film.spreads.thickness, micrometres),
    oil_L_min: spreadOnly(film.spreads.flow, inLitresAMinute),
    friction_W: spreadOnly(film.spreads.power, same),
    rise_degC: spreadOnly(film.spreads.rise, same),
  },
});

const figuresJson = ({ bearing, figures, warm, pressureFlow }: ClearanceFilm) => ({
  l_d: shortened(lengthRatio(bearing)),
  theory: warm.theory,
  doubts: warm.doubts,
  sommerfeld: shortened(warm.film.sommerfeld),
  eccentricity: shortened(warm.film.eccentricity),
  attitude_deg: shortened(warm.film.attitude),
  film_um: micrometres(figures.thickness),
  film_um_other_theory: warm.other === undefined ? null : micrometres(warm.other.thickness),
  film_um_trumpler: micrometres(trumplerThickness(bearing.diameter)),
  oil_L_min: shortened(inLitresAMinute(figures.flow)),
  oil_by_pressure_L_min: pressureFlow === undefined ? null : shortened(inLitresAMinute(pressureFlow)),
  torque_Nm: shortened(warm.film.torque),
  friction_W: shortened(figures.power),
  rise_degC: shortened(figures.rise),
  viscosity_mPas: shortened(warm.viscosity * 1000),
});

const MILLIMETRE = 1e7;
const millimetres = (metres: number): number => shortened(metres * 1000);
const micrometres = (metres: number): number => shortened(metres * 1e6);
const same = (value: number): number => value;

const spreadOnly = ({ least, greatest }: Spread, as: (value: number) => number) => ({
  least: shortened(as(least)),
  greatest: shortened(as(greatest)),
});

const spreadJson = (value: number, spread: Spread, as: (value: number) => number) => ({
  value: shortened(as(value)),
  ...spreadOnly(spread, as),
});
