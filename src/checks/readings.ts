import {
  decimalsFor,
  formatAmount,
  formatDistance,
  formatNumber,
  formatUncertainty,
} from '../quantity/format.ts';
import { absolute, compare, type Fraction, subtract } from '../quantity/fraction.ts';
import type { Unit } from '../quantity/units.ts';
import { type Finding, type FindingCode, finding } from './finding.ts';
import type { JudgedRoute, Row } from './row.ts';
import type { Side, SidedLimits, SideLimit, Verdict } from './verdict.ts';

/** How a row's numbers are printed: the unit of the report, and the digits that stand behind it. */
export interface Printing {
  readonly unit: Unit;
  readonly decimals: number;
}

export function printingOf(row: Row, unitFor: (row: Row) => Unit): Printing {
  const unit = unitFor(row);
  const [judged] = row.routes;
  return { unit, decimals: judged === undefined ? 0 : decimalsFor(judged.route.lastDigit, unit) };
}

const CODES: Partial<Record<Verdict, FindingCode>> = {
  out: 'reading/out',
  undecided: 'reading/undecided',
  missing: 'reading/missing',
  worn: 'reading/worn',
  'off target': 'reading/off-target',
};

/** What a row's verdict says, in words with the numbers. */
export function readingFindings(row: Row, unitFor: (row: Row) => Unit): readonly Finding[] {
  const printing = printingOf(row, unitFor);
  const { verdict, past, marginal } = row.judgement;
  const code = verdict === null ? undefined : CODES[verdict];
  return [
    ...(code === undefined ? [] : [about(row, code, verdictMessage(row, printing), past?.limit)]),
    ...(marginal && verdict !== 'undecided' ? marginalFinding(row, printing) : []),
    ...row.routes.slice(1).flatMap((route) => disagreement(row, route, printing) ?? []),
    ...row.limits.lacking.map((name) =>
      about(
        row,
        'reading/missing',
        `${name} was not measured here, and a limit of ${named(row)} is worked out from it`,
      ),
    ),
  ];
}

const about = (row: Row, code: FindingCode, message: string, limit?: SideLimit): Finding =>
  finding(code, row.place, message, {
    measure: row.characteristic.id,
    position: row.position,
    limitPlace: limit?.place,
  });

/** `main bearing clearance 5 (flywheel end)`. */
export function named({ characteristic, position, label }: Row): string {
  if (characteristic.family === 'engine') return characteristic.label;
  if (characteristic.family === 'step') return `${characteristic.label} after ${position}`;
  return `${characteristic.label} ${position}${label === undefined ? '' : ` (${label})`}`;
}

/** `0.0045`, or `0.0041 to 0.0045` where least and greatest differ as printed. */
export function readingText({ least, greatest }: JudgedRoute, { unit, decimals }: Printing): string {
  const [low, high] = [formatNumber(least, unit, decimals), formatNumber(greatest, unit, decimals)];
  return low === high ? high : `${low} to ${high}`;
}

function verdictMessage(row: Row, printing: Printing): string {
  const { verdict, past, probability, deciding } = row.judgement;
  const [judged] = row.routes;
  if (judged === undefined) return `${named(row)} was not measured, and others of it were`;
  const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name}`;
  if (verdict === 'undecided') {
    const inside = `${Math.round((probability ?? 0) * 100)} % likely inside`;
    const u = formatUncertainty(judged.route.expanded, printing.unit);
    return `${reading} is too near ${nearestText(judged, deciding, printing)} to decide at ±${u} (${inside})`;
  }
  return past === undefined
    ? reading
    : `${reading}, ${pastText(row, printing)} (${limitText(past.side, past.limit, printing)})`;
}

/** The deciding limit that the reading lies nearest to. */
function nearestSide({ least, greatest }: JudgedRoute, { min, max }: SidedLimits): Side {
  if (min === undefined || max === undefined) return min === undefined ? 'max' : 'min';
  const above = absolute(subtract(max.amount, greatest));
  return compare(above, absolute(subtract(least, min.amount))) <= 0 ? 'max' : 'min';
}

function nearestText(judged: JudgedRoute, deciding: SidedLimits, printing: Printing): string {
  const side = nearestSide(judged, deciding);
  const limit = deciding[side];
  return limit === undefined ? '' : limitText(side, limit, printing);
}

/** `new max 0.0038`. */
export const limitText = (side: 'min' | 'max', limit: SideLimit, { unit, decimals }: Printing): string =>
  `${limit.band} ${side} ${formatLimit(limit.amount, unit, decimals)}`;

/** A limit in the report's unit with the digits of the readings, or more where it has more. */
export function formatLimit(amount: Fraction, unit: Unit, decimals: number): string {
  const exact = formatNumber(amount, unit, 9).replace(/0+$/, '');
  const own = exact.length - exact.indexOf('.') - 1;
  return formatNumber(amount, unit, Math.max(decimals, Math.min(own, decimals + 2)));
}

/** `loose by 7 tenths`. */
export function pastText(row: Row, { unit, decimals }: Printing): string {
  const { past } = row.judgement;
  if (past === undefined) return '';
  const { above, below } = row.characteristic.words;
  return `${past.side === 'max' ? above : below} by ${formatDistance(past.by, unit, decimals)}`;
}

function marginalFinding(row: Row, printing: Printing): readonly Finding[] {
  const [judged] = row.routes;
  if (judged === undefined) return [];
  const u = formatUncertainty(judged.route.expanded, printing.unit);
  const { deciding } = row.judgement;
  const message = `${named(row)}: ${readingText(judged, printing)} lies within ±${u} of ${nearestText(judged, deciding, printing)}`;
  return [about(row, 'reading/marginal', message, deciding[nearestSide(judged, deciding)])];
}

/** Two routes that differ by more than their uncertainty allows: |E_n| above 1. */
function disagreement(row: Row, other: JudgedRoute, printing: Printing): Finding | undefined {
  const [judged] = row.routes;
  if (judged === undefined || other.en === null || other.en <= 1) return undefined;
  const text = (each: JudgedRoute): string =>
    `${formatAmount(each.mean, printing.unit, printing.decimals)} (${each.route.name}, ${each.route.with.join(' and ')})`;
  const message = `${named(row)}: ${text(judged)} and ${text(other)} differ by more than their uncertainty allows, E_n ${other.en.toFixed(1)}`;
  return { ...about(row, 'method/disagree', message), place: other.route.place };
}
