import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import { outlierOf } from '../../measurement/outlier.ts';
import { subtractValues } from '../../measurement/value.ts';
import { formatAmount, formatDistance, formatUncertainty } from '../../quantity/format.ts';
import {
  absolute,
  type Fraction,
  greatest,
  least,
  subtract,
  toNumber,
  ZERO,
} from '../../quantity/fraction.ts';
import { nearestTurn } from '../../quantity/turn.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding, isCovered } from '../finding.ts';
import { statedMake } from '../grades/statedMake.ts';
import type { JudgedRoute, Row, SessionView } from '../judge/row.ts';
import { uncertaintyOf } from '../value/routes.ts';
import { named, printingOf } from './readings.ts';

const SPREAD: FindingKind = {
  code: 'reading/spread',
  severity: 'warning',
  means:
    'One position differs from all others of its kind by more than three times the uncertainty of the difference, and by much more than the others differ from each other: of four positions 12.5 times as much, of five 4.6 times, of six 2.8 times, of ten or more 1.3 times. By chance that happens once in a hundred engines (test of Dixon). It is a remark where the value, or a figure that is worked out from it alone, is out or accepted, since another finding says so.',
  matters:
    'Parts of one kind wear alike. One that does not may have had too little oil, may be out of line, or may be of another size.',
  usually:
    'Measure it again, and look for the cause before the engine is assembled. Where the part is of another thickness on purpose, state its size or code at that place: `fitted: { main_shells: { code: B, at: { 3: { code: C } } } }`; only places of one size and code are compared.',
  example:
    'main journal diameter 3: 3.2462 in differs by 1.5 thou (±0.000080 in) from the nearest position, 2 at 3.2477 in; the 4 others lie within 2 tenths',
};

export const spreadKinds: readonly FindingKind[] = [SPREAD];

/** Far larger than uncertainty: a gap of this many expanded uncertainties (our judgement, no source). */
const FAR = 3;

interface Read {
  readonly row: Row;
  readonly judged: JudgedRoute;
}

/** Positions that stand apart from their like; those already said to be slips of the pen are left out. */
export function spreadFindings(
  rows: readonly Row[],
  slips: readonly Finding[],
  view: SessionView,
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  const { layout } = view.engine.document;
  const isSlip = (id: string, at: Position): boolean =>
    isCovered(id, at, slips) || slips.some((each) => each.measure === id && each.at === at);
  const groups = new Map<string, Read[]>();
  for (const row of rows) {
    const [judged] = row.routes;
    const { id, family, onlyWithLimits } = row.characteristic;
    // Out of round and taper are ranges, which are skewed; steps have a check of their own.
    if (judged === undefined || family.isNamedBySession || onlyWithLimits || isSlip(id, row.position)) {
      continue;
    }
    // Parts of different sizes are not like each other, nor are shells of one size that were chosen by their thickness.
    const like = `${id} ${statedMake(row, view)}`;
    const group = groups.get(like);
    if (group === undefined) groups.set(like, [{ row, judged }]);
    else group.push({ row, judged });
  }
  const found = [...groups.values()].flatMap((group) => apart(group, rows, unitFor) ?? []);
  return found.filter(
    (each) => !found.some((other) => isBeside(other, each, layout) && isInput(other, each, rows)),
  );
}

const isBeside = ({ at: other }: Finding, { at }: Finding, layout: Layout): boolean =>
  at !== undefined && other !== undefined && relate(layout, at, other.family)?.includes(other) === true;

/** What is worked out from the one that stands apart stands apart with it: that goes without saying. */
const isInput = (input: Finding, of: Finding, rows: readonly Row[]): boolean =>
  rows.some(
    ({ characteristic, position, routes }) =>
      characteristic.id === of.measure &&
      position === of.at &&
      routes[0]?.route.inputs.some((route) => route.block?.measure.id === input.measure),
  );

/** What is out was said to be, with its numbers, and what was accepted is known. */
const isSaid = ({ judgement }: Row): boolean =>
  judgement.verdict === 'out' || judgement.verdict === 'accepted';

/** A rod whose bend is out has a bar that stands apart. */
const formsOf = ({ characteristic, position }: Row, rows: readonly Row[]): readonly Row[] =>
  rows.filter((each) => {
    const inputs = each.routes[0]?.route.inputs ?? [];
    const isOfIt = inputs.every(({ block }) => block?.measure.id === characteristic.id);
    return each.position === position && inputs.length > 0 && isOfIt;
  });

function apart(
  group: readonly Read[],
  rows: readonly Row[],
  unitFor: (row: Row) => Unit,
): Finding | undefined {
  const [{ judged: first, row } = {}] = group;
  const inTurn = (mean: Fraction): Fraction =>
    nearestTurn(mean, first?.mean ?? mean, row?.characteristic.cycle);
  const outlier = outlierOf(group.map(({ judged }) => toNumber(inTurn(judged.mean))));
  const [one, next] = [outlier && group[outlier.index], outlier && group[outlier.neighbour]];
  if (one === undefined || next === undefined) return undefined;
  const difference = subtractValues(one.judged.route.measured.mean, next.judged.route.measured.mean);
  const distance = absolute(nearestTurn(difference.amount, ZERO, one.row.characteristic.cycle));
  const { expanded } = uncertaintyOf({ least: difference, mean: difference, greatest: difference });
  if (toNumber(distance) <= FAR * expanded) return undefined;
  const { unit, decimals } = printingOf(one.row, unitFor);
  const text = (read: Read): string => formatAmount(read.judged.mean, unit, decimals);
  const gap = formatDistance(distance, unit, decimals);
  const rest = group.filter((each) => each !== one).map(({ judged }) => inTurn(judged.mean));
  const range = subtract(greatest(rest), least(rest));
  const others =
    range.n === 0n
      ? `the ${rest.length} others are equal`
      : `the ${rest.length} others lie within ${formatDistance(range, unit, decimals)}`;
  const message = `${named(one.row)}: ${text(one)} differs by ${gap} (±${formatUncertainty(expanded, unit)} ${unit.name}) from the nearest position, ${next.row.position.name} at ${text(next)}; ${others}`;
  return finding(SPREAD, one.row.place, message, {
    severity: [one.row, ...formsOf(one.row, rows)].some(isSaid) ? 'remark' : 'warning',
    measure: one.row.characteristic.id,
    position: one.row.position,
  });
}
