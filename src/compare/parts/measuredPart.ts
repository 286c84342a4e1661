import type { Characteristic } from '../../characteristics/characteristic.ts';
import { isAt } from '../../checks/history/dependsOn.ts';
import type { Row } from '../../checks/judge/row.ts';
import { measuredRows, viewOf } from '../../checks/value/measured.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Trend, type TrendAxis, trendOfFollowed } from '../trend.ts';
import type { MarkedPart, Sitting } from './markedParts.ts';

/** A sitting with what was measured of the part. */
export interface MeasuredSitting extends Sitting {
  readonly rows: readonly Row[];
}

export interface MeasuredPart extends MarkedPart {
  readonly sittings: readonly MeasuredSitting[];
}

export const measuredPart = (part: MarkedPart): MeasuredPart => withRows(part, sittingRows);

const withRows = (part: MarkedPart, rowsOf: typeof sittingRows): MeasuredPart => ({
  ...part,
  sittings: part.sittings.map((each) => ({
    ...each,
    rows: rowsOf(each).filter((row) => row.routes.length > 0 && isOfIt(row, each)),
  })),
});

/** What was measured of parts: a session that several were there in is judged once. */
export function measuredParts(parts: readonly MarkedPart[]): readonly MeasuredPart[] {
  const known = new Map<SessionDocument, readonly Row[]>();
  return parts.map((part) =>
    withRows(part, (sitting) => {
      const rows = known.get(sitting.session) ?? sittingRows(sitting);
      known.set(sitting.session, rows);
      return rows;
    }),
  );
}

const sittingRows = ({ engine, registry, session }: Sitting): readonly Row[] =>
  measuredRows(viewOf(engine, registry, session));

/** Measured of the part itself; a clearance is of two. */
const isOfIt = ({ characteristic: { of }, position }: Row, { parts, registry, engine }: Sitting): boolean =>
  of !== undefined && parts.some((each) => isAt(of, position, each, registry, engine.document.layout));

/** In the order in which they were first measured. */
export const characteristicsOf = ({ sittings }: MeasuredPart): readonly Characteristic[] => [
  ...new Map(
    sittings.flatMap(({ rows }) => rows.map(({ characteristic }) => [characteristic.id, characteristic])),
  ).values(),
];

/** One characteristic of a part, from engine to engine; undefined of a part that was never there. */
export function partTrend(
  { sittings }: MeasuredPart,
  characteristic: Characteristic,
  asked?: TrendAxis,
): Trend | undefined {
  const layout = sittings.at(-1)?.engine.document.layout;
  return layout && trendOfFollowed(sittings, layout, characteristic, asked);
}
