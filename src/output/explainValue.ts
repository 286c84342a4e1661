import { formatLimit, type Printing, printingOf, readingText } from '../checks/readings.ts';
import type { EngineReport, ReportedSession } from '../checks/report.ts';
import { unitsFor } from '../checks/report.ts';
import type { Route } from '../checks/routes.ts';
import type { JudgedRoute, Row } from '../checks/row.ts';
import { decidingOrder, type SideLimit } from '../checks/verdict.ts';
import type { Place } from '../diagnostic/place.ts';
import { BAND_NAMES } from '../documents/bands.ts';
import { pointsOf } from '../documents/reading.ts';
import { expandedFactor } from '../measurement/conformance.ts';
import { formatNumber, formatUncertainty } from '../quantity/format.ts';
import { positionText, verdictText } from './checkTables.ts';
import { type Cell, cell, layTable } from './table.ts';
import type { TextStyle } from './textStyle.ts';
import { visible } from './visible.ts';

const LEFT = { align: 'left' } as const;
const RIGHT = { align: 'right' } as const;

/** Where a value comes from: its readings, the sum, the error budget, the bands and why the verdict is what it is. */
export function valueText(
  row: Row,
  session: ReportedSession,
  report: EngineReport,
  style: TextStyle,
): string {
  const printing = printingOf(row, unitsFor(report.engine));
  const [judged, ...others] = row.routes;
  const { stage, date } = session.session;
  const title = `${row.characteristic.label} ${positionText(row)}`.trim();
  const heading = `${style.paint.strong(visible(title))}  ${stage} ${date}`;
  if (judged === undefined) return `${heading}\n\n  ${row.judgement.verdict ?? 'not measured'}\n`;
  const blocks = [
    [
      heading,
      `  ${readingText(judged, printing)} ${printing.unit.name}  ${verdictText(row, printing)}`.trimEnd(),
    ],
    ['readings', ...readingLines(judged.route)],
    [judged.route.inputs.length === 0 ? 'as read' : 'worked out', ...sumLines(judged, printing)],
    ['error budget', ...budgetLines(judged, printing)],
    ['limits', ...limitLines(row, printing)],
    ['verdict', ...reasonLines(row, session, report, printing)],
    ...(others.length === 0 ? [] : [['other routes', ...others.map((each) => otherLine(each, printing))]]),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const placeText = ({ path, line, column }: Place): string => `${visible(path)}:${line}:${column}`;

/** What was typed, with file and line; of a derived value everything that it comes from. */
function readingLines(route: Route): readonly string[] {
  const rows = leavesOf(route).map((leaf): readonly Cell[] => [
    cell(leaf.block?.measure.id ?? leaf.name),
    cell(visible(leaf.written.join(', '))),
    cell(visible([...leaf.with, ...setterText(leaf)].join(', '))),
    cell(placeText(leaf.place)),
  ]);
  const notes = route.notes.map((note) => `  ${visible(note)}`);
  return [...layTable(rows, [LEFT, LEFT, LEFT, LEFT]), ...notes];
}

const setterText = ({ block }: Route): readonly string[] =>
  block?.setWith === undefined ? [] : [`set with ${block.setWith.name}`];

const leavesOf = (route: Route): readonly Route[] =>
  route.inputs.length === 0 ? [route] : route.inputs.flatMap(leavesOf);

/** The formula, and the numbers that went into it. */
function sumLines(judged: JudgedRoute, printing: Printing): readonly string[] {
  const { route } = judged;
  const number = (amount: JudgedRoute['least']): string =>
    formatNumber(amount, printing.unit, printing.decimals + 1);
  const ends = [
    [cell('least'), cell(number(judged.least))],
    [cell('mean'), cell(number(judged.mean))],
    [cell('greatest'), cell(number(judged.greatest))],
  ];
  const inputs = route.inputs.map((input): readonly Cell[] => [
    cell(input.block?.measure.id ?? input.name),
    cell(`${number(input.measured.least.amount)} to ${number(input.measured.greatest.amount)}`),
  ]);
  const formula = route.inputs.length === 0 ? [] : [`  ${route.name}`];
  return [...formula, ...layTable([...inputs, ...ends], [LEFT, RIGHT])];
}

/** Every source of error, the largest first, with its share of the whole (of the squares). */
function budgetLines({ route }: JudgedRoute, { unit }: Printing): readonly string[] {
  const { terms } = route.worse;
  const places = pointPlaces(route);
  const whole = route.u * route.u;
  const rows = [...terms]
    .sort(([, a], [, b]) => Math.abs(b.u) - Math.abs(a.u))
    .map(([source, { u, dof }]): readonly Cell[] => [
      cell(visible(sourceText(source, places))),
      cell(formatUncertainty(Math.abs(u), unit)),
      cell(`${Math.round((100 * u * u) / whole)} %`),
      cell(Number.isFinite(dof) ? `${dof} degrees of freedom` : ''),
    ]);
  const factor = expandedFactor(route.dof).toFixed(2);
  const dof = Number.isFinite(route.dof) ? `, ${route.dof.toFixed(1)} degrees of freedom` : '';
  return [
    ...layTable(rows, [LEFT, RIGHT, RIGHT, LEFT]),
    `  together u ${formatUncertainty(route.u, unit)}${dof}; expanded to 95 %: ±${formatUncertainty(route.expanded, unit)} (${factor} u)`,
  ];
}

/** Line and column of every reading behind a value, by the file and pointer that name its own errors. */
function pointPlaces(route: Route): ReadonlyMap<string, string> {
  const points = leavesOf(route).flatMap(({ block, place }) =>
    (block?.positions ?? [])
      .flatMap(pointsOf)
      .map((point) => [`${place.path}#${point.pointer}`, point] as const),
  );
  return new Map(points.map(([id, { written }]) => [id, written]));
}

/** `resolution of mic-3-4 at FILE#/readings/0/…` is an error of one reading: it is shown with what was read. */
const sourceText = (source: string, readings: ReadonlyMap<string, string>): string =>
  source.replace(/ at (\S.*#\/.*)$/, (all, id: string) => {
    const written = readings.get(id);
    return written === undefined ? all : `, reading ${written}`;
  });

function limitLines(row: Row, printing: Printing): readonly string[] {
  const { bands, inForce } = row.limits;
  const rows = BAND_NAMES.flatMap((name) =>
    (['min', 'max'] as const).flatMap((side) => {
      const limit = bands[name]?.[side];
      return limit === undefined
        ? []
        : [[cell(name), cell(side), cell(limitNumber(limit, printing)), cell(placeText(limit.place))]];
    }),
  );
  if (rows.length === 0) return ['  none'];
  const source = inForce.source === undefined ? [] : [`  source: ${visible(inForce.source)}`];
  return [...layTable(rows, [LEFT, LEFT, LEFT, LEFT]), ...source];
}

/** A formula is shown with its numbers in it. */
function limitNumber(limit: SideLimit, { unit, decimals }: Printing): string {
  const number = formatLimit(limit.amount, unit, decimals);
  return /[\u00d7+/\u2212(]/.test(limit.written) ? `${number} = ${limit.written}` : number;
}

function reasonLines(
  row: Row,
  { session }: ReportedSession,
  { rule }: EngineReport,
  printing: Printing,
): readonly string[] {
  const { deciding, verdict, probability } = row.judgement;
  const order = decidingOrder(session.stage, undefined).join(', else ');
  const side = (name: 'min' | 'max'): string => {
    const limit = deciding[name];
    return limit === undefined
      ? `no ${name}`
      : `${name} ${formatLimit(limit.amount, printing.unit, printing.decimals)} (${limit.band})`;
  };
  return [
    `  ${session.stage} is decided by ${order}, side by side: ${side('min')}, ${side('max')}`,
    rule === 'simple'
      ? '  rule simple: least and greatest are compared with them as they stand'
      : `  rule guarded: inside from 95 %, out up to 5 %; here ${((probability ?? 0) * 100).toFixed(1)} % likely inside`,
    `  so it is ${verdict ?? 'not judged: no limit decides'}${row.concession === undefined ? '' : `; a concession stands: ${visible(row.concession.concession.reason)}`}`,
  ];
}

function otherLine(other: JudgedRoute, printing: Printing): string {
  const en = other.en === null ? '' : `, E_n ${other.en.toFixed(2)}`;
  const u = formatUncertainty(other.route.expanded, printing.unit);
  return `  ${other.route.name} (${visible(other.route.with.join(', '))}): ${readingText(other, printing)} ±${u}${en}`;
}
