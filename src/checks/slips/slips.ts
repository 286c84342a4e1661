import type { Unit } from '../../quantity/units.ts';
import type { Finding } from '../finding.ts';
import { isReadAgain } from '../history/readAgain.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { exchangedFindings } from './exchanged.ts';
import { hoursFindings } from './hours.ts';
import { shortFindings } from './lastFigure.ts';
import { otherFigureFindings } from './lookalike/otherFigure.ts';
import { otherSignFindings } from './lookalike/otherSign.ts';
import { otherVolumeFindings } from './lookalike/otherVolume.ts';
import { movedFindings } from './movedTogether.ts';
import { Expectations } from './plausible.ts';
import { pointFindings, slipOfOneApart } from './pointSlips.ts';
import { doubtedPoints, type SlipContext } from './slipContext.ts';

export const slipContext = (
  view: SessionView,
  rows: readonly Row[],
  unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
): SlipContext => ({
  view,
  expectations: new Expectations(view, rows),
  points: doubtedPoints(view),
  unitFor,
});

/**
 * Lengths that no honest part explains, and hours that run backwards. What many readings have in common is one finding;
 * of the rest each position has one. Nothing is ever corrected.
 */
export function slipFindings(context: SlipContext): readonly Finding[] {
  const exchanged = exchangedFindings(context);
  const known = [...exchanged, ...lookalikeFindings(context)];
  const common = [...known, ...movedFindings(context, known)];
  const found = [...common, ...pointFindings(context, common)];
  const open = found.filter((each) => !isReadAgain(each, context.view));
  return [...open, ...shortFindings(context, found), ...hoursFindings(context)];
}

const lookalikeFindings = (context: SlipContext): readonly Finding[] => [
  ...otherFigureFindings(context),
  ...otherVolumeFindings(context),
  ...otherSignFindings(context),
];

/** Of positions that stand apart from their like those that a slip brings back among them are slips. */
export const slipsOfThoseApart = (apart: readonly Finding[], context: SlipContext): readonly Finding[] =>
  apart.map((each) => {
    const slip = slipOfOneApart(each.measure, each.at, context);
    return slip === undefined || isReadAgain(slip, context.view) ? each : slip;
  });
