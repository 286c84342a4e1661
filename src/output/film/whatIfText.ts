import type { ClearanceFilm } from '../../oiling/bearingFilm.ts';
import { inMetres } from '../../oiling/inSi.ts';
import type { ClearanceLimit, WhatIf } from '../../oiling/whatIf.ts';
import { type Unit, unitNamed } from '../../quantity/units.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { glyphsOf } from '../trend/trendPicture.ts';
import { drawCurve } from './filmChart.ts';
import { endLines, headLines, type ToldFilms } from './filmText.ts';
import { filmText, filmUnit, flowText, lengthText, powerText, riseText } from './filmWords.ts';

const RIGHT = { align: 'right' } as const;

/** What other clearances would do to film and flow: a chart of each with the limits in it, and a table. */
export function whatIfLines(of: WhatIf, reported: ToldFilms, style: TextStyle): readonly Line[] {
  const { clearance } = unitsOf(reported);
  return withGaps([
    headLines(reported, style),
    [
      line`${style.paint.strong(of.kind.kind.plural)}  film, ${filmUnit(clearance).name}`,
      ...chart(of, reported, style, 'film'),
    ],
    ['oil, L/min', ...chart(of, reported, style, 'oil')],
    limitLines(of, clearance, style),
    tableLines(of, reported),
    endLines(reported, style),
  ]);
}

const unitsOf = ({ kinds, units }: ToldFilms): { readonly clearance: Unit } => {
  const row = kinds[0]?.films[0]?.now.row;
  return { clearance: row === undefined ? unitNamed('mm') : units.ofRow(row) };
};

function chart(
  { films, measured, limits }: WhatIf,
  reported: ToldFilms,
  style: TextStyle,
  what: 'film' | 'oil',
): readonly string[] {
  const { clearance } = unitsOf(reported);
  const point = ({ clearance: x, figures }: ClearanceFilm) => ({
    x,
    y: what === 'film' ? figures.thickness : figures.flow,
  });
  return drawCurve(
    {
      curve: films.map(point),
      marks: measured.map((film) => {
        const expanded = inMetres(film.judged.route.expanded);
        return { ...point(film), from: film.clearance - expanded, to: film.clearance + expanded };
      }),
      limits: limits.map((each) => each.clearance),
      formatX: (x) => clearanceText(x, clearance),
      formatY: (y) => (what === 'film' ? filmText(y, filmUnit(clearance)) : flowText(y)),
    },
    style.width,
    glyphsOf(style),
  );
}

const clearanceText = (metres: number, unit: Unit): string =>
  lengthText(metres, unit, unit.name === 'in' ? 4 : 3);

function limitLines({ limits, measured }: WhatIf, unit: Unit, style: TextStyle): readonly Line[] {
  const { reading, axis, limit } = glyphsOf(style);
  const named = limits.map(
    ({ band, side, clearance }: ClearanceLimit) => `${band} ${side} ${clearanceText(clearance, unit)}`,
  );
  return [
    ...(named.length === 0 ? [] : wrap(`  ${axis} limits: ${named.join(', ')}`, style.width)),
    ...(measured.length === 0 ? [] : [`  ${reading} as measured, ${limit} within its uncertainty`]),
  ];
}

/** Few rows: a curve shows the rest. */
const ROWS = 8;

function tableLines({ films }: WhatIf, reported: ToldFilms): readonly Line[] {
  const { clearance } = unitsOf(reported);
  const { temperature } = reported.units;
  const every = (films.length - 1) / ROWS;
  const head = [
    `clearance, ${clearance.name}`,
    `film, ${filmUnit(clearance).name}`,
    'eccentricity',
    'oil, L/min',
    'friction, W',
    `warms, ${temperature.name}`,
  ].map(cell);
  const rows = films
    .filter((_, index) => index % every === 0)
    .map(({ clearance: of, figures, warm }): readonly Cell[] =>
      [
        clearanceText(of, clearance),
        filmText(figures.thickness, filmUnit(clearance)),
        warm.film.eccentricity.toFixed(2),
        flowText(figures.flow),
        powerText(figures.power),
        riseText(figures.rise, temperature),
      ].map(cell),
    );
  return layTable(
    [head, ...rows],
    head.map(() => RIGHT),
  );
}
