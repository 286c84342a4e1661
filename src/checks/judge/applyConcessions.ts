import type { Concession } from '../../documents/session/concessions.ts';
import { compare } from '../../quantity/fraction.ts';
import { nearestTurn } from '../../quantity/turn.ts';
import type { ConcessionInForce, ConcessionOfSide } from './concessionInForce.ts';
import type { Row } from './row.ts';
import type { Side } from './sideLimit.ts';
import { standing } from './spans.ts';
import { type Past, passedLimits } from './verdict.ts';

/**
 * A row that is out becomes accepted where concessions in force reach as far as it lies, on each side on which it is
 * out; of several for one position any may do it. Else its verdict speaks of a side that nothing covers.
 */
export function applyConcessions(row: Row, inForce: readonly ConcessionInForce[]): Row {
  const [judged] = row.routes;
  if (row.judgement.verdict !== 'out' || judged === undefined) return row;
  const bearing = inForce.filter((each) => !each.isOver && bearsOn(each, row));
  if (bearing.length === 0) return row;
  const sides = passedLimits(judged, row.judgement.deciding);
  const concessions = sides.flatMap(({ side }) => concessionOf(row, side, bearing) ?? []);
  const open = sides.find(({ side }) => !concessions.some((each) => each.side === side && each.isEnough));
  return { ...row, concessions, judgement: { ...row.judgement, ...decided(open, sides) } };
}

const decided = (
  open: Past | undefined,
  [farthest]: readonly Past[],
): Pick<Row['judgement'], 'verdict' | 'past'> =>
  open === undefined ? { verdict: 'accepted', past: farthest } : { verdict: 'out', past: open };

export const bearsOn = ({ concession }: ConcessionInForce, { characteristic, position }: Row): boolean =>
  concession.measure.id === characteristic.id && concession.positions.includes(position);

/** What bears on one side: the first that covers it, else the one that reaches farthest, else what speaks of the other. */
function concessionOf(
  row: Row,
  side: Side,
  bearing: readonly ConcessionInForce[],
): ConcessionOfSide | undefined {
  const enough = bearing.find(({ concession }) => isCovered(row, side, concession));
  const found = enough ?? farthest(bearing, side) ?? bearing[0];
  return found && { ...found, side, isEnough: enough !== undefined };
}

export const reachOf = ({ upTo, downTo }: Concession, side: Side): Concession['upTo'] =>
  side === 'max' ? upTo : downTo;

/** A concession that says nothing of a side accepts nothing there. */
function isCovered({ routes: [judged], characteristic }: Row, side: Side, concession: Concession): boolean {
  const stated = reachOf(concession, side);
  if (judged === undefined || stated === undefined) return false;
  const reach = nearestTurn(stated.amount, judged.mean, characteristic.cycle);
  const spans = judged.spans ?? [{ from: judged.least, to: judged.greatest }];
  return spans.every((span) => standing(span, side, reach) === 'inside');
}

function farthest(bearing: readonly ConcessionInForce[], side: Side): ConcessionInForce | undefined {
  const direction = side === 'max' ? -1 : 1;
  return bearing
    .flatMap((each) => {
      const reach = reachOf(each.concession, side)?.amount;
      return reach === undefined ? [] : [{ each, reach }];
    })
    .sort((a, b) => direction * compare(a.reach, b.reach))[0]?.each;
}
