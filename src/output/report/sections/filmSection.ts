import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import type { ClearanceFilm } from '../../../oiling/bearingFilm.ts';
import { deliveryOf, demandOf, engineFilms, type KindFilms } from '../../../oiling/engineFilms.ts';
import { inLitresAMinute, inMetres, lengthFrom } from '../../../oiling/inSi.ts';
import { isLacking, supplyOf } from '../../../oiling/supply.ts';
import { type WhatIf, whatIf } from '../../../oiling/whatIf.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import type { Unit } from '../../../quantity/units.ts';
import { CAUTION, filmUnit, flowText } from '../../film/filmWords.ts';
import type { FilmPicture } from '../../page/pictures/film.ts';
import { items, type SheetSection, section } from '../sheet.ts';

/** What the measured clearances do to the oil, where the engine states oil, speed and loads. */
export function filmSection(report: EngineReport, state: StateReport): readonly SheetSection[] {
  const supply = supplyOf(report.engine);
  if (isLacking(supply)) return [];
  const kinds = engineFilms(report, state, supply);
  const pictures = kinds.flatMap((kind) => kindPictures(kind, unitsFor(report.engine)));
  if (pictures.length === 0) return [];
  const demand = demandOf(kinds);
  const delivery = deliveryOf(report);
  const said = [
    ...(demand === undefined
      ? []
      : [
          `Oil demand ${flowText(demand.flow)} L/min (${flowText(demand.least)} to ${flowText(demand.greatest)})${
            delivery === undefined ? '' : `; the pump delivers ${flowText(delivery)} L/min`
          }.`,
        ]),
    CAUTION,
  ];
  return section('Oil films, estimated', [{ kind: 'pictures', pictures }, ...items('text', said)]);
}

/** From half of the least to half more than the greatest that was measured or is allowed. */
function kindPictures(kind: KindFilms, unitFor: ReturnType<typeof unitsFor>): readonly FilmPicture[] {
  const [first] = kind.films;
  if (first === undefined || 'lacking' in kind.bearings) return [];
  const clearances = kind.films.map(({ now }) => now.clearance);
  const from = Math.min(...clearances) / 2;
  const of = whatIf(kind, kind.bearings, from, Math.max(...clearances) * 1.5);
  const unit = unitFor(first.now.row);
  return [
    picture(of, unit, `film of the ${kind.kind.plural}, ${filmUnit(unit).name}`, ({ figures }) =>
      sizeIn(figures.thickness, filmUnit(unit)),
    ),
    picture(of, unit, `oil of one of the ${kind.kind.plural}, L/min`, ({ figures }) =>
      inLitresAMinute(figures.flow),
    ),
  ];
}

const sizeIn = (metres: number, unit: Unit): number => lengthFrom(metres) / toNumber(unit.factor);

function picture(
  { films, measured, limits }: WhatIf,
  unit: Unit,
  title: string,
  heightOf: (film: ClearanceFilm) => number,
): FilmPicture {
  const across = (metres: number): number => sizeIn(metres, unit);
  const heights = films.map(heightOf);
  const [from, to] = [across(films[0]?.clearance ?? 0), across(films.at(-1)?.clearance ?? 0)];
  const high = Math.max(...heights);
  const decimals = unit.name === 'in' ? 4 : 3;
  return {
    kind: 'film',
    title,
    description: `over clearances from ${from.toFixed(decimals)} to ${to.toFixed(decimals)} ${unit.name}; ${measured.length} measured`,
    curve: films.map((film) => ({ x: across(film.clearance), y: heightOf(film) })),
    bearings: measured.map((film) => ({
      x: across(film.clearance),
      y: heightOf(film),
      uncertainty: across(inMetres(film.judged.route.expanded)),
    })),
    // What a builder aims for lies close to them, and its names would lie over theirs.
    limits: limits.flatMap(({ band, side, clearance }) =>
      band === 'target' ? [] : [{ x: across(clearance), text: `${band} ${side}` }],
    ),
    x: { from, to, fromText: from.toFixed(decimals), toText: `${to.toFixed(decimals)} ${unit.name}` },
    // From nothing: a film that hardly changes is to look so.
    y: { from: 0, to: high, fromText: '0', toText: high.toFixed(2) },
  };
}
