import { positionText } from '../../layout/naming.ts';
import {
  capability,
  coarsestUncertainty,
  expandedFactor,
  LEAST_CAPABILITY,
} from '../../measurement/conformance.ts';
import { isBare, isWithoutSteps } from '../../measurement/instrument.ts';
import { formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { subtract, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { alike, type Some } from '../alike.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { alternatives } from '../value/alternatives.ts';
import type { Route } from '../value/route.ts';
import { limitText, type Printing, printingOf } from './readings.ts';

const COARSE: FindingKind = {
  code: 'instrument/coarse',
  severity: 'warning',
  means:
    'The instrument is too coarse for these limits. Even a reading in the middle between them is not inside with 95 % probability: tolerance / 4u is below 0.98 (JCGM 106:2012).',
  matters: 'With this instrument no value can be shown to be inside the limits.',
  usually:
    'Measure with the finer instrument that the message names, or by the other route. Where a number was written with fewer digits than were read, such as 0.2 for 0.20, write them all: the last digit counts as the step of a scale whose resolution is not registered.',
  example:
    'main bearing clearance 1, 2: strip, ±0.00057 in, is too coarse to show a value inside new min 0.0025 and new max 0.0035; bore-2-6 set with mic-3-4 and mic-3-4 would do, ±0.00015',
};

export const capabilityKinds: readonly FindingKind[] = [COARSE];

interface Coarse {
  readonly row: Row;
  readonly route: Route;
  readonly tolerance: number;
}

/** Two-sided limits that the judged route is too coarse for; said once for each tolerance and set of instruments. */
export function capabilityFindings(
  view: SessionView,
  rows: readonly Row[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  const found = rows.flatMap((row): readonly Coarse[] => {
    const route = row.routes[0]?.route;
    const tolerance = toleranceOf(row);
    if (route === undefined || tolerance === undefined || route.u === 0) return [];
    return capability(tolerance, route.u) >= LEAST_CAPABILITY ? [] : [{ row, route, tolerance }];
  });
  return alike(found, ({ row, route, tolerance }) =>
    [
      row.characteristic.id,
      ...route.with,
      route.name,
      tolerance,
      oneDigitMore(route, tolerance, view)?.text,
    ].join(),
  ).map((group) => coarse(group, view, printingOf(group[0].row, unitFor)));
}

function toleranceOf({ judgement: { deciding } }: Row): number | undefined {
  const { min, max } = deciding;
  return min === undefined || max === undefined ? undefined : toNumber(subtract(max.amount, min.amount));
}

function coarse(group: Some<Coarse>, view: SessionView, printing: Printing): Finding {
  const [{ row, route, tolerance }] = group;
  const { characteristic, position, judgement } = row;
  const { unit } = printing;
  const limits = (['min', 'max'] as const).flatMap((side) => {
    const limit = judgement.deciding[side];
    return limit === undefined ? [] : [limitText(side, limit, printing)];
  });
  const where = group.map((each) => positionText(each.row.position)).join(', ');
  const message =
    `${[characteristic.label, where].filter(Boolean).join(' ')}: ${route.with.join(' and ')}, ±${withUnitName(formatUncertainty(route.expanded, unit), unit)}, ` +
    `is too coarse to show a value inside ${limits.join(' and ')}; ${remedy(row, route, tolerance, view, unit)}`;
  return finding(COARSE, row.place, message, {
    measure: characteristic.id,
    ...(group.length === 1 ? { position } : {}),
    limitPlace: judgement.deciding.max?.place,
  });
}

function remedy(row: Row, route: Route, tolerance: number, view: SessionView, unit: Unit): string {
  const plusMinus = (u: number): string => `±${formatUncertainty(u * expandedFactor(Infinity), unit)}`;
  const longer = oneDigitMore(route, tolerance, view);
  if (longer !== undefined)
    return `its last digit counts as the step of the scale: write ${longer.text} where it was read so, ${plusMinus(longer.u)}`;
  const [finest] = alternatives(row.characteristic, row.position, route, view);
  return finest !== undefined && capability(tolerance, finest.u) >= LEAST_CAPABILITY
    ? `${finest.instruments} would do, ${plusMinus(finest.u)}`
    : `no registered instrument would do: ${plusMinus(coarsestUncertainty(tolerance))} is needed`;
}

/** A reading whose last digit alone makes it too coarse, with one digit more: 0.20 for 0.2. */
function oneDigitMore(
  { written: [text = '', ...others], with: [name = ''], inputs, lastDigit, u }: Route,
  tolerance: number,
  { engine }: SessionView,
): { readonly text: string; readonly u: number } | undefined {
  const instrument = engine.instruments.get(name);
  const isDigitTheStep = instrument !== undefined && isWithoutSteps(instrument) && !isBare(instrument);
  const [, whole, decimals, unit = ''] = /^(\d+)(\.\d+)?( \w+)?$/.exec(text) ?? [];
  if (!isDigitTheStep || inputs.length + others.length > 0 || whole === undefined) return undefined;
  // A step is a rectangular distribution of its width: its variance is a twelfth of its square.
  const finer = Math.sqrt(u ** 2 - (toNumber(lastDigit) ** 2 * (1 - 0.1 ** 2)) / 12);
  if (capability(tolerance, finer) < LEAST_CAPABILITY) return undefined;
  return { text: `${whole}${decimals ?? '.'}0${unit}`, u: finer };
}
