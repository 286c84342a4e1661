import type { Printing } from '../../checks/findings/readings.ts';
import type { JudgedRoute } from '../../checks/judge/row.ts';
import { leavesOf, type Route } from '../../checks/value/route.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import { namedAt } from '../../layout/naming.ts';
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
  const readings = readingsBehind(route);
  const sources = [...terms.keys()];
  const whole = route.u * route.u;
  const rows = [...terms]
    .sort(([, a], [, b]) => Math.abs(b.u) - Math.abs(a.u))
    .map(([source, { u, dof }]): readonly Cell[] => [
      cell(sourceText(source, sources, readings)),
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

interface Behind {
  /** `piston weight 2`, or what all of a block are of. */
  readonly input: string;
  /** As typed; of a whole block nothing. */
  readonly written: string | undefined;
}

type AllBehind = ReadonlyMap<string, Behind>;

/** What is behind a value, by the file and pointer that name the errors of a reading and those of its block. */
function readingsBehind(route: Route): AllBehind {
  const behind = new Map<string, Behind>();
  for (const { block, place, characteristic } of leavesOf(route)) {
    const { label } = characteristic;
    if (block === undefined) continue;
    behind.set(`${place.path}#/readings/${block.index}`, { input: label, written: undefined });
    for (const reading of block.positions) {
      const input = namedAt(label, reading.position);
      for (const { pointer, written } of pointsOf(reading))
        behind.set(`${place.path}#${pointer}`, { input, written });
    }
  }
  return behind;
}

const OF_READING = / at (?!zeroing)(\S.*#\/.*)$/;

/** `resolution of mic-3-4 at FILE#/readings/0/…` is an error of one reading, shown with what was read, or of a whole block. */
function sourceText(source: string, sources: readonly string[], readings: AllBehind): string {
  const [, id = ''] = OF_READING.exec(source) ?? [];
  const kind = source.replace(OF_READING, '');
  const behind = readings.get(id);
  if (behind === undefined) return kind;
  const inputs = sources
    .filter((each) => each.replace(OF_READING, '') === kind)
    .map((each) => readings.get(OF_READING.exec(each)?.[1] ?? '')?.input);
  // Several errors of one kind: only their readings tell them apart.
  const input = new Set(inputs).size < 2 ? '' : `, ${behind.input}`;
  return `${kind}${input}${behind.written === undefined ? '' : `, reading ${behind.written}`}`;
}

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
