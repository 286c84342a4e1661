import type { Printing } from '../../checks/findings/readings.ts';
import type { JudgedRoute } from '../../checks/judge/row.ts';
import { leavesOf, type Route } from '../../checks/value/route.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import { expandedFactor } from '../../measurement/conformance.ts';
import type { Instrument, MaxError } from '../../measurement/instrument.ts';
import { anInstrument } from '../../measurement/instrument.ts';
import { formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { Line } from '../escape/line.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';

const LEFT = { align: 'left' } as const;
const RIGHT = { align: 'right' } as const;

/** Every source of error, the largest first, with its share of the whole (of the squares). */
export function budgetLines(
  { route }: JudgedRoute,
  { unit }: Printing,
  unitFor: (of: Route) => Unit,
): readonly Line[] {
  const { terms } = route.worse;
  const places = writtenPoints(route);
  const whole = route.u * route.u;
  const rows = [...terms]
    .sort(([, a], [, b]) => Math.abs(b.u) - Math.abs(a.u))
    .map(([source, { u, dof }]): readonly Cell[] => [
      cell(sourceText(source, places)),
      cell(formatUncertainty(Math.abs(u), unit)),
      cell(`${Math.round((100 * u * u) / whole)} %`),
      cell(Number.isFinite(dof) ? `${dof} degrees of freedom` : ''),
    ]);
  const factor = expandedFactor(route.dof).toFixed(2);
  const dof = Number.isFinite(route.dof) ? `, ${route.dof.toFixed(1)} degrees of freedom` : '';
  return [
    ...layTable(rows, [LEFT, RIGHT, RIGHT, LEFT]),
    `  together u ${formatUncertainty(route.u, unit)}${dof}; expanded to 95 %: ±${formatUncertainty(route.expanded, unit)} (${factor} u)`,
    ...new Set(leavesOf(route).flatMap((leaf) => assumedTexts(leaf, unit, unitFor(leaf)))),
  ];
}

/** What each reading behind a value was typed as, by the file and pointer that name its own errors. */
function writtenPoints(route: Route): ReadonlyMap<string, string> {
  const points = leavesOf(route).flatMap(({ block, place }) =>
    (block?.positions ?? [])
      .flatMap(pointsOf)
      .map((point) => [`${place.path}#${point.pointer}`, point.written] as const),
  );
  return new Map(points);
}

/** `resolution of mic-3-4 at FILE#/readings/0/…` is an error of one reading, shown with what was read, or of a whole block. */
const sourceText = (source: string, readings: ReadonlyMap<string, string>): string =>
  source.replace(/ at (?!zeroing)(\S.*#\/.*)$/, (_, id: string) => {
    const written = readings.get(id);
    return written === undefined ? '' : `, reading ${written}`;
  });

/** In the unit of the figure where the reading is one of its quantity, else in that of the reading. */
const assumedTexts = ({ assumed }: Route, unit: Unit, own: Unit): readonly string[] =>
  assumed.map((each) => assumptionText(each, own.quantity === unit.quantity ? unit : own));

/** The figure that stands for an instrument of which the register has none, and where that figure comes from. */
function assumptionText({ type, maxError, source, isRegistered }: Instrument, unit: Unit): string {
  const error = maxError === undefined ? '' : ` of ±${maxErrorText(maxError, unit)}`;
  const from = source === undefined ? '' : ` (${source})`;
  const why = isRegistered ? 'the register gives it no error' : 'not in the register';
  return `  ${why}: a largest error${error} is assumed, that of ${anInstrument(type)}${from}`;
}

const maxErrorText = (error: MaxError, unit: Unit): string =>
  'share' in error
    ? `${toNumber(error.share) * 100} % of the reading`
    : withUnitName(formatUncertainty(toNumber(error.amount), unit), unit);
