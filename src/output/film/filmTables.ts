import { plusMinus, printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { lengthRatio } from '../../film/bearing.ts';
import { SHORTEST } from '../../film/chart.ts';
import { trumplerThickness } from '../../film/designCriteria.ts';
import type { Bearings, MeasuredFilm } from '../../oiling/bearingFilm.ts';
import type { FilmThenAndNow, KindFilms } from '../../oiling/engineFilms.ts';
import type { Unit } from '../../quantity/units.ts';
import { positionText } from '../check/view/rowView.ts';
import { type Line, line } from '../escape/line.ts';
import { type Cell, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import {
  filmText,
  filmUnit,
  flowText,
  lengthText,
  loadText,
  powerText,
  riseText,
  spreadText,
} from './filmWords.ts';

export interface FilmUnits {
  readonly ofRow: (row: Row) => Unit;
  readonly temperature: Unit;
  readonly force: Unit;
}

/** The columns that are shown: in a narrow window what a clearance does to film and flow, alone; of a film at last only its range. */
const SHAPES = {
  all: [0, 1, 2, 3, 4, 5, 6, 7],
  few: [0, 1, 2, 3, 5],
  least: [0, 1, 3, 5],
} as const;
type Shape = keyof typeof SHAPES;
const WIDEST_FIRST: readonly Shape[] = ['all', 'few', 'least'];

const LEFT = { align: 'left' } as const;
const RIGHT = { align: 'right' } as const;

/** The bearings of one kind: what they are, a row for each, and what their films are doubtful for. */
export function kindLines(of: KindFilms, units: FilmUnits, style: TextStyle): readonly Line[] {
  const { kind, bearings, films, without } = of;
  if ('lacking' in bearings) {
    const wanted = bearings.lacking.map((each) => `\`${each}\``).join(' and ');
    return wrap(`${kind.plural}: no film, until the engine document states ${wanted}`, style.width);
  }
  const [first] = films;
  if (first === undefined) return without.map(withoutText);
  const unit = units.ofRow(first.now.row);
  return [
    line`${style.paint.strong(kind.plural)}  ${sizesText(bearings, unit)}`,
    ...wrap(`  load ${loadText(bearings.load, units.force)}`, style.width),
    ...fitting(style.width, WIDEST_FIRST, (shape) => tableLines(films, shape, unit, units)),
    ...doubtLines(of, unit).flatMap((each) => wrap(`  ${each}`, style.width)),
    ...without.map(withoutText),
  ];
}

const sizesText = ({ diameter, length }: Bearings, unit: Unit): string => {
  const decimals = unit.name === 'in' ? 3 : 1;
  const [across, along] = [diameter, length].map((each) => lengthText(each, unit, decimals));
  return `${across} by ${along} ${unit.name}, l/d ${(length / diameter).toFixed(2)}`;
};

function tableLines(
  films: readonly FilmThenAndNow[],
  shape: Shape,
  unit: Unit,
  units: FilmUnits,
): readonly Line[] {
  const rows = [headings(shape, unit, units), ...films.flatMap((each) => rowsOf(each, unit, units))];
  const columns = [LEFT, RIGHT, RIGHT, LEFT, RIGHT, RIGHT, RIGHT, RIGHT];
  const shown = <Each>(all: readonly Each[]): readonly Each[] => SHAPES[shape].flatMap((at) => all[at] ?? []);
  return layTable(rows.map(shown), shown(columns));
}

const headings = (shape: Shape, unit: Unit, { temperature }: FilmUnits): readonly Cell[] =>
  [
    '',
    `clearance, ${unit.name}`,
    `film, ${filmUnit(unit).name}`,
    shape === 'least' ? `film, ${filmUnit(unit).name}` : '',
    'eccentricity',
    'oil, L/min',
    'friction, W',
    `warms, ${temperature.name}`,
  ].map(cell);

const rowsOf = (
  { now, before }: FilmThenAndNow,
  unit: Unit,
  units: FilmUnits,
): readonly (readonly Cell[])[] => [
  cellsOf(positionText(now.row), now, unit, units),
  ...(before === undefined ? [] : [cellsOf(`  teardown ${before.date}`, before.film, unit, units)]),
];

function cellsOf(name: string, of: MeasuredFilm, unit: Unit, units: FilmUnits): readonly Cell[] {
  const { figures, spreads, judged, row, warm } = of;
  const film = (metres: number): string => filmText(metres, filmUnit(unit));
  return [
    name,
    `${readingText(judged, printingOf(row, units.ofRow))} ${plusMinus(judged.route, unit)}`,
    film(figures.thickness),
    spreadText(spreads.thickness, film),
    warm.film.eccentricity.toFixed(2),
    flowText(figures.flow),
    powerText(figures.power),
    riseText(figures.rise, units.temperature),
  ].map(cell);
}

const withoutText = (row: Row): string =>
  `  ${positionText(row)}: no film, since its clearance is not sure to be above zero`;

/** What is to be known of these numbers before anybody trusts them. */
function doubtLines({ films, bearings }: KindFilms, unit: Unit): readonly string[] {
  const all = films.map(({ now }) => now);
  const [first] = all;
  if (first === undefined) return [];
  return [
    theoryText(first, unit),
    ...doubtsOf(all).map((doubt) => DOUBTS[doubt]),
    ...(first.more === 0 ? [] : [warmText(first, unit)]),
    ...('load' in bearings && bearings.load.from === 'gas' ? [PEAK] : []),
    criterionText(all, first, unit),
  ];
}

function theoryText({ warm, bearing }: MeasuredFilm, unit: Unit): string {
  if (warm.theory === 'short') {
    return `by the theory of short bearings, since l/d ${lengthRatio(bearing).toFixed(2)} is below ${SHORTEST}, where the charts begin`;
  }
  const other = warm.other === undefined ? '' : filmText(warm.other.thickness, filmUnit(unit));
  return `by the charts of Raimondi and Boyd; the theory of short bearings, which fits l/d below ${SHORTEST}, would say ${other} of the first`;
}

const warmText = ({ more }: MeasuredFilm, unit: Unit): string =>
  `clearances are ${lengthText(more, unit, unit.name === 'in' ? 4 : 3)} ${unit.name} more in the warm engine, by \`running:\`, and films are of those`;

const PEAK =
  'a peak that lasts a few degrees has no time to press a film as thin as a steady load does: it is thicker than shown';

const doubtsOf = (films: readonly MeasuredFilm[]) => [...new Set(films.flatMap(({ warm }) => warm.doubts))];

const DOUBTS = {
  'beyond the charts':
    'a film is thinner than any that is tabled: read it as thinner than 0.03 of the radial clearance, and no closer',
  'short theory off':
    'an eccentricity is above 0.6, where the theory of short bearings is 14 to 28 % off, and films are thinner than shown',
} as const;

/** A published figure to hold films against: for a design, not a limit. */
function criterionText(films: readonly MeasuredFilm[], { bearing }: MeasuredFilm, unit: Unit): string {
  const asked = trumplerThickness(bearing.diameter);
  const below = films.filter(({ figures }) => figures.thickness < asked).length;
  const text = `Trumpler asks ${filmText(asked, filmUnit(unit))} ${filmUnit(unit).name} of a design`;
  return below === 0
    ? `${text}, and all are thicker`
    : `${text}; thinner than that: ${below} of ${films.length}`;
}
