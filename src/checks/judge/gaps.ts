import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { isLeftOutIn, notTaken, supportsOf } from '../value/notTaken.ts';
import { canBeAt } from './missing.ts';
import type { Row, SessionView } from './row.ts';

/** Where a limit asks for a value and there is none: left out on purpose where a reason is given, else missing. */
export function gapsOf(
  rows: readonly Row[],
  characteristic: Characteristic,
  view: SessionView,
): ReadonlyMap<Row, Row> {
  const { registry, engine, session, earlier = [] } = view;
  const supports = supportsOf(characteristic, [session, ...earlier]);
  // What is missing has no place of its own: it is reported beside what was measured.
  const place = rows.find(({ routes }) => routes.length > 0)?.place ?? session.start;
  return new Map(
    rows
      .filter(({ routes, judgement }) => routes.length === 0 && judgement.verdict === 'missing')
      .filter(({ position }) => !supports.has(position))
      .filter(({ position }) => canBeAt(characteristic, position, registry, engine.document.layout))
      .map((row) => [row, gapOf({ ...row, place }, view)]),
  );
}

function gapOf(row: Row, view: SessionView): Row {
  const left = notTaken(
    row.characteristic,
    row.position,
    sessionsFor(row.characteristic, row.position, view),
    view.engine.document.layout,
  );
  if (left === undefined || left.reason === '') return { ...row, notTaken: left };
  return {
    ...row,
    notTaken: left,
    place: left.place,
    judgement: { ...row.judgement, verdict: 'left out' },
  };
}

/** A reason holds as long as a reading in its place would have. */
const sessionsFor = (
  characteristic: Characteristic,
  position: Position,
  { session, earlier = [], holds }: SessionView,
): readonly SessionDocument[] => [
  session,
  ...earlier.filter((each) => holds?.(characteristic, position, each) === true),
];

/** Whether a reason is given anywhere for what was not read of it. */
export const isLeftOut = (characteristic: Characteristic, { session, earlier = [] }: SessionView): boolean =>
  [session, ...earlier].some((each) => isLeftOutIn(each, characteristic));
