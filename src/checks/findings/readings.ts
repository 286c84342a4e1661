import { isPlainSize } from '../../documents/engine/plainSizes.ts';
import type { Outcomes } from '../../documents/measure.ts';
import { namedAt } from '../../layout/naming.ts';
import {
  decimalsFor,
  formatAmount,
  formatDistance,
  formatNumber,
  formatUncertainty,
  withUnitName,
} from '../../quantity/format.ts';
import {
  absolute,
  compare,
  equals,
  type Fraction,
  fraction,
  parseDecimal,
  subtract,
} from '../../quantity/fraction.ts';
import { nearestTurn } from '../../quantity/turn.ts';
import type { Unit } from '../../quantity/units.ts';
import { inOneSentence } from '../../quantity/words.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { oldSizeText } from '../grades/oldSize.ts';
import type { FailedLimit } from '../judge/limits.ts';
import type { JudgedRoute, Row } from '../judge/row.ts';
import type { Side, SidedLimits, SideLimit } from '../judge/sideLimit.ts';
import { type Past, sideAcross, type Verdict } from '../judge/verdict.ts';
import { leavesOf, type Route } from '../value/route.ts';

/** How a row's numbers are printed: the unit of the report, and the digits of the finest reading of its table. */
export interface Printing {
  readonly unit: Unit;
  readonly decimals: number;
  /** Of a test what a pass and a fail are called. */
  readonly outcomes?: Outcomes | undefined;
}

export function printingOf(row: Row, unitFor: (row: Row) => Unit): Printing {
  const unit = unitFor(row);
  const decimals = row.lastDigit === undefined ? 0 : decimalsFor(row.lastDigit, unit);
  return {
    unit,
    decimals: looksInside(row, unit, decimals) ? decimals + 1 : decimals,
    outcomes: row.characteristic.outcomes,
  };
}

/** A mean that is past its limit by less than the last digit of its readings: rounded to that, it stands on the limit as that is printed. */
function looksInside({ judgement: { past }, routes: [judged] }: Row, unit: Unit, decimals: number): boolean {
  if (past === undefined || judged === undefined) return false;
  const read = past.side === 'max' ? judged.greatest : judged.least;
  return formatNumber(read, unit, decimals) === formatLimit(past.limit.amount, unit, decimals);
}

const OUT: FindingKind = {
  code: 'reading/out',
  severity: 'error',
  means:
    'The value lies beyond the limit that decides at this stage: wear limits at teardown and service, limits of new parts otherwise.',
  matters:
    'The part is not to be used as it is: the limit is the last that the engine maker, or the shop, allows.',
  usually:
    'Measure again with a finer instrument, machine or renew the part, or record a concession with its reason. If a used part goes in again, write `condition: used` below `fitted:`; then its wear limit decides.',
  example: 'main journal diameter 2: 3.2455 in, small by 1 thou (wear min 3.2465)',
};
const UNDECIDED: FindingKind = {
  code: 'reading/undecided',
  severity: 'warning',
  means:
    'It cannot be decided on which side of a limit the value is. Under the guarded rule: the limit is nearer to the value than its uncertainty allows. Under both rules: the value was read as a range, such as `under 0.004`, and the limit is inside the range.',
  matters: 'A reading that proves nothing is easily taken for a good one.',
  usually:
    'Measure again with a finer instrument or more readings; `explain` shows which source of error is the largest.',
  example:
    'main journal diameter 2: 3.2466 in is too near wear min 3.2465 to decide at ±0.00013, 94 % likely inside',
};
export const MISSING: FindingKind = {
  code: 'reading/missing',
  severity: 'warning',
  means: 'A position has limits and no value, while others of its kind were measured in the same session.',
  matters: 'A position that was skipped is easily taken for measured.',
  usually: 'Measure it, or say why it was left out on purpose: `{ value: ~, note: bore plugged }`.',
  example: 'main journal diameter 2 is missing; other positions were measured',
};
const LEFT_OUT: FindingKind = {
  code: 'reading/left-out',
  severity: 'remark',
  means:
    'A position has limits and was not measured on purpose: it is written as `~`, and its note says why. The reason holds as long as a reading there would: until its part is machined or renewed, or a joint is opened.',
  matters: 'Nobody knows whether the part is within its limits. The engine is closed up with it as it is.',
  usually:
    'Measure it when that is possible. Before the engine is closed up, `plan --closing` lists it as a box; `confirmed:` in a session says who ticked it.',
  example: 'main journal diameter 2 was left out on purpose: cap seized',
};
const WORN: FindingKind = {
  code: 'reading/worn',
  severity: 'remark',
  means: 'The value is outside the limits of new parts and inside the wear limit.',
  matters: 'The part may be used again, and will reach its wear limit sooner than a new one.',
  usually: 'Decide with the owner; `trend` estimates how long it will last.',
  example: 'main journal diameter 2: 3.2470 in, small by 5 tenths (new min 3.2475)',
};
const OFF_TARGET: FindingKind = {
  code: 'reading/off-target',
  severity: 'remark',
  means: 'The value is inside its limits and outside what this builder aims for.',
  matters: 'Other parts, or another pairing of parts, may come nearer to the target.',
  usually: 'Try other shells or another pairing, or leave it.',
  example: 'main journal diameter 2: 3.2486 in, large by 3 tenths (target max 3.2483)',
};
const MARGINAL: FindingKind = {
  code: 'reading/marginal',
  severity: 'remark',
  means: 'The value is nearer to a limit that decides than its uncertainty (±).',
  matters:
    'The simple rule compares the value as it was read. The true value may be on the other side of the limit.',
  usually: 'Measure again with a finer instrument where it matters.',
  example: 'main journal diameter 2: 3.2465 lies within ±0.00013 of wear min 3.2465',
};
const DISAGREE: FindingKind = {
  code: 'method/disagree',
  severity: 'warning',
  means:
    'Two ways of measuring the same thing differ by more than the uncertainty of their difference: the ratio of the two, E_n, is above 1 (ISO 13528).',
  matters: 'At least one of the two is wrong, and the program cannot say which.',
  usually: 'Repeat both. Look for a slip of the pen, a gauge that was set wrongly, a strip that was moved.',
  example:
    'main bearing clearance 1: 0.0030 in (bearing bore − journal, bore-2-6 and mic-3-4) and 0.0060 in (read directly, strip-mid) differ by 2.6 times the uncertainty of their difference (E_n)',
};

const NO_LIMIT: FindingKind = {
  code: 'limits/formula',
  severity: 'warning',
  means:
    'The formula of a limit cannot be evaluated with what was measured at this position: it divides by zero, or takes the root of a negative number.',
  matters: 'Without that limit no value at this position can be `ok`.',
  usually: 'Look at the readings that the formula names; then correct the formula.',
  example:
    'main bearing clearance 2: new max 0.0040 − sqrt(3.2479 − 3.2480) cannot be worked out: this takes the square root of a negative number, -0.0001',
};

export const readingKinds: readonly FindingKind[] = [
  OUT,
  UNDECIDED,
  MISSING,
  LEFT_OUT,
  WORN,
  OFF_TARGET,
  MARGINAL,
  DISAGREE,
  NO_LIMIT,
];

const KIND_OF: Partial<Record<Verdict, FindingKind>> = {
  out: OUT,
  undecided: UNDECIDED,
  missing: MISSING,
  'left out': LEFT_OUT,
  worn: WORN,
  'off target': OFF_TARGET,
};

/** What a row's verdict says, in words with the numbers. */
export function readingFindings(row: Row, unitFor: (row: Row) => Unit, effect?: string): readonly Finding[] {
  const { verdict, marginal } = row.judgement;
  const kind = verdict === null ? undefined : KIND_OF[verdict];
  // Of most rows there is nothing to say.
  if (kind === undefined && !marginal && row.routes.length < 2 && isWhole(row.limits)) return [];
  const printing = printingOf(row, unitFor);
  return [
    ...(kind === undefined ? [] : [verdictFinding(kind, row, printing, effect)]),
    ...(marginal && verdict !== 'undecided' ? marginalFinding(row, printing) : []),
    ...row.routes.slice(1).flatMap((route) => disagreement(row, route, printing) ?? []),
    // Of a position that was not measured at all it is enough to say that.
    ...(row.routes.length === 0 ? [] : row.limits.lacking).map((name) =>
      about(row, MISSING, lackingMessage(row, name)),
    ),
    ...row.limits.failed.map((failed) => withoutLimit(row, failed)),
  ];
}

const isWhole = ({ lacking, failed }: Row['limits']): boolean => lacking.length === 0 && failed.length === 0;

function verdictFinding(kind: FindingKind, row: Row, printing: Printing, effect?: string): Finding {
  const fact = verdictMessage(row, printing);
  const message = effect === undefined ? fact : `${fact}; ${effect}`;
  return { ...about(row, kind, message, row.judgement.past?.limit ?? limitInQuestion(row)), fact };
}

const lackingMessage = (row: Row, name: string): string =>
  isPlainSize(name)
    ? `a limit of ${named(row)} is worked out from ${name}, and the engine document does not give it: write it below sizes:`
    : `${name} ${name.endsWith(']') ? 'lacks a reading' : 'was not measured here'}, and a limit of ${named(row)} is worked out from it`;

const withoutLimit = (row: Row, { band, side, written, problem, place }: FailedLimit): Finding => ({
  ...about(
    row,
    NO_LIMIT,
    `${named(row)}: ${band} ${side} ${written} cannot be worked out: ${problem.message}`,
  ),
  limitPlace: place,
});

/** Of a value that is undecided or missing the limit that it is asked for. */
function limitInQuestion({ judgement, routes }: Row): SideLimit | undefined {
  const { deciding, verdict } = judgement;
  const [judged] = routes;
  if (judged === undefined) return deciding.max ?? deciding.min;
  if (verdict !== 'undecided') return undefined;
  return deciding[sideAcross(judged, deciding) ?? nearestSide(judged, deciding)];
}

const about = (row: Row, kind: FindingKind, message: string, limit?: SideLimit): Finding =>
  finding(kind, row.place, message, {
    measure: row.characteristic.id,
    position: row.position,
    limitPlace: limit?.place,
  });

/** `main bearing clearance 5 (flywheel end)`. */
export const named = ({ characteristic, position, half }: Row): string =>
  [namedAt(characteristic.label, position), ...(half === undefined ? [] : [half])].join(' ');

/** `±0.00013`; `(assumed)` behind it where the instrument's error is not known but assumed. */
export const plusMinus = ({ expanded, assumed }: Route, unit: Unit): string =>
  `±${formatUncertainty(expanded, unit)}${assumed.length > 0 ? ' (assumed)' : ''}`;

/** `0.0045`, or `0.0041 to 0.0045` where least and greatest differ as printed. */
export function readingText(
  { least, greatest }: JudgedRoute,
  { unit, decimals, outcomes }: Printing,
): string {
  if (outcomes !== undefined) return least.n === 0n ? outcomes.fail : outcomes.pass;
  const [low, high] = [formatNumber(least, unit, decimals), formatNumber(greatest, unit, decimals)];
  return low === high ? high : `${low} to ${high}`;
}

/** The same with its unit. */
export const amountText = (judged: JudgedRoute, printing: Printing): string =>
  withUnitName(readingText(judged, printing), printing.unit);

function verdictMessage(row: Row, printing: Printing): string {
  const { verdict, past, probability, deciding } = row.judgement;
  const [judged] = row.routes;
  if (judged === undefined) return gapMessage(row);
  const reading = `${named(row)}: ${amountText(judged, printing)}`;
  if (verdict === 'undecided') {
    const across = sideAcross(judged, deciding);
    const limit = across && deciding[across];
    if (across !== undefined && limit !== undefined)
      return `${reading}, read as ${judged.route.written.join(', ')}, may lie on either side of ${limitText(across, limit, printing)}`;
    const inside = `${Math.round((probability ?? 0) * 100)} % likely inside`;
    const u = plusMinus(judged.route, printing.unit);
    return `${reading} is too near ${nearestText(judged, deciding, printing)} to decide at ${u}, ${inside}`;
  }
  return past === undefined ? reading : `${reading}, ${pastLimitText(row, past, printing)}`;
}

/** `thin by 0.109 mm (wear min 2.095)`, and of an old size what it no longer fits. */
export const pastLimitText = (row: Row, { side, limit }: Past, printing: Printing): string =>
  `${pastText(row, printing)} (${limitText(side, limit, printing)})${oldSizeText(row, printing.unit)}`;

function gapMessage(row: Row): string {
  const { notTaken, judgement } = row;
  if (judgement.verdict === 'left out')
    return `${named(row)} was left out on purpose: ${notTaken?.reason ?? ''}`;
  const isForgotten = notTaken === undefined || row.characteristic.onlyWithLimits === true;
  return isForgotten ? missingMessage(row) : `${missingMessage(row)}; ${HOW_TO_SAY_WHY}`;
}

const HOW_TO_SAY_WHY = 'if it was left out on purpose, write why: { value: ~, note: … }';

/** What is worked out may lack readings though its part was measured: one diameter shows no taper. */
function missingMessage(row: Row): string {
  if (row.characteristic.outcomes !== undefined)
    return `${named(row)} is missing; other positions were tested`;
  const [derivation] = row.characteristic.derivations;
  return row.characteristic.onlyWithLimits === true && derivation !== undefined
    ? `${named(row)} cannot be worked out from what was read of ${inOneSentence(derivation.inputs).replaceAll('_', ' ')}`
    : `${named(row)} is missing; other positions were measured`;
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
export const limitText = (side: 'min' | 'max', limit: SideLimit, printing: Printing): string =>
  `${limit.band} ${side} ${limitNumber(limit, printing)}`;

/** One that was moved to another temperature shows one digit more than the readings: its own have no end. */
export const limitNumber = (
  limit: SideLimit,
  { unit, decimals }: Pick<Printing, 'unit' | 'decimals'>,
): string =>
  limit.stated === undefined
    ? formatLimit(unit.quantity === 'angle' ? unturned(limit) : limit.amount, unit, decimals)
    : formatNumber(limit.amount, unit, decimals + 1);

/** A limit that was moved by whole turns to where an angle was read is still printed as its document has it. */
function unturned({ amount, written }: SideLimit): Fraction {
  const [, degrees] = /^([-+]?\d*\.?\d+)(?: ?deg)?$/.exec(written) ?? [];
  if (degrees === undefined) return amount;
  const own = parseDecimal(degrees);
  return equals(nearestTurn(own, amount, HALF_A_TURN), amount) ? own : amount;
}

/** An angle between lobes comes round again after it, all others after so many of it. */
const HALF_A_TURN = fraction(180);

/** A limit is written with no more decimals than this; more of them come of a formula or of another unit. */
const MOST_WRITTEN = 6;

/** A limit in the report's unit with the digits of the readings, and with all of its own that were written. */
export function formatLimit(amount: Fraction, unit: Unit, decimals: number): string {
  const exact = formatNumber(amount, unit, 9).replace(/0+$/, '');
  const own = exact.length - exact.indexOf('.') - 1;
  const shown = own <= MOST_WRITTEN ? own : Math.max(decimals + 2, decimalsToThreeDigits(exact));
  return formatNumber(amount, unit, Math.max(decimals, Math.min(own, shown)));
}

/** `0.0019685039` says something from its sixth decimal on. */
const decimalsToThreeDigits = (exact: string): number => (/^-?0\.(0*)/.exec(exact)?.[1]?.length ?? -3) + 3;

/** `loose by 7 tenths`. */
export function pastText(row: Row, { unit, decimals }: Printing): string {
  const { past } = row.judgement;
  if (past === undefined) return '';
  const { above, below } = row.characteristic.words;
  const word = past.side === 'max' ? above : below;
  // A range that begins on its limit lies beyond it by nobody knows how much.
  return past.by.n === 0n ? word : `${word} by ${formatDistance(past.by, unit, decimals)}`;
}

function marginalFinding(row: Row, printing: Printing): readonly Finding[] {
  const [judged] = row.routes;
  if (judged === undefined) return [];
  const u = plusMinus(judged.route, printing.unit);
  const { deciding } = row.judgement;
  const message = `${named(row)}: ${readingText(judged, printing)} lies within ${u} of ${nearestText(judged, deciding, printing)}`;
  return [about(row, MARGINAL, message, deciding[nearestSide(judged, deciding)])];
}

const daysOf = (route: Route): string =>
  [
    ...new Set(
      leavesOf(route)
        .map(({ takenOn }) => takenOn)
        .filter(Boolean),
    ),
  ]
    .sort()
    .join(' and ');

/** Two routes that differ by more than their uncertainty allows: |E_n| above 1. */
function disagreement(row: Row, other: JudgedRoute, printing: Printing): Finding | undefined {
  const [judged] = row.routes;
  if (judged === undefined || other.en === null || other.en <= 1) return undefined;
  const days = [judged, other].map(({ route }) => daysOf(route));
  // Of one day it is enough to say how; else the day is the first that one looks at.
  const isOfOneDay = days[0] === days[1];
  const text = ({ route, mean }: JudgedRoute): string => {
    const how = [route.name, route.with.join(' and '), ...(isOfOneDay ? [] : [daysOf(route)])];
    return `${formatAmount(mean, printing.unit, printing.decimals)} (${how.join(', ')})`;
  };
  const message = `${named(row)}: ${text(judged)} and ${text(other)} differ by ${other.en.toFixed(1)} times the uncertainty of their difference (E_n)`;
  return { ...about(row, DISAGREE, message), place: other.route.place };
}
