import { formatDistance, formatNumber, withUnitName } from '../../quantity/format.ts';
import { type Fraction, subtract, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, finding } from '../finding.ts';
import { amountText, named, printingOf } from '../findings/readings.ts';
import { ANOTHER_GRADE } from '../grades/gradeFindings.ts';
import type { Row, SessionView } from '../judge/row.ts';
import type { Route } from '../value/route.ts';
import { earlierOf } from './readAgain.ts';

/** Heads and decks that are lower than an earlier session read them, where no document says that they were cut. */
export const unstatedCutFindings = (
  rows: readonly Row[],
  view: SessionView,
  unitFor: (row: Row) => Unit,
): readonly Finding[] => rows.flatMap((row) => unstatedCut(row, view, unitFor) ?? []);

function unstatedCut(row: Row, view: SessionView, unitFor: (row: Row) => Unit): Finding | undefined {
  const { characteristic, position, routes } = row;
  const [judged] = routes;
  if (characteristic.isCutDown !== true || judged?.route.readIn !== view.session) return undefined;
  const before = earlierOf({ measure: characteristic.id, at: position }, view).at(-1);
  if (before === undefined || !isLower(judged.route, before)) return undefined;
  const printing = printingOf(row, unitFor);
  const { unit, decimals } = printing;
  const number = (amount: Fraction): string => formatNumber(amount, unit, decimals);
  const was = [...new Set([number(before.measured.least.amount), number(before.measured.greatest.amount)])];
  const off = formatDistance(subtract(before.measured.mean.amount, judged.mean), unit, decimals);
  const message = `${named(row)}: ${amountText(judged, printing)}, and ${withUnitName(was.join(' to '), unit)} on ${before.takenOn}: lower by ${off}, and no document says that it was cut; write \`${lineFor(row, view)}\` in this session, so that what was read before the cut${suchAs(row)} counts no more; else measure it again`;
  return finding(ANOTHER_GRADE, row.place, message, { measure: characteristic.id, position });
}

/** Both ends of what was read, by more than both are known to: the other end of a head alone is no cut. */
function isLower(now: Route, before: Route): boolean {
  const known = now.expanded + before.expanded;
  const ends = ['least', 'greatest'] as const;
  return ends.every(
    (end) => toNumber(subtract(before.measured[end].amount, now.measured[end].amount)) > known,
  );
}

function lineFor({ characteristic, position }: Row, { engine, registry }: SessionView): string {
  const part = registry.parts.find(characteristic.of ?? '');
  const isOneOfMany =
    part?.family === position.family && engine.document.layout.positionsOf(position.family).length > 1;
  return `machined: [{ part: ${part?.label}${isOneOfMany ? `, at: [${position.name}]` : ''} }]`;
}

/** What a cut of the face leaves otherwise than it was read, and nobody thinks of. */
const suchAs = ({ characteristic }: Row): string =>
  characteristic.of === 'head' ? ', such as valve recession,' : '';
