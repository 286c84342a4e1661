import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Registry } from '../characteristics/registry.ts';
import { partHistoryStart } from '../checks/history/partHistory.ts';
import type { Row } from '../checks/judge/row.ts';
import type { Side, SideLimit } from '../checks/judge/sideLimit.ts';
import type { MeasuredSession } from '../checks/value/measured.ts';
import type { Engine } from '../documents/assemble.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import { inOrderOf, type Layout } from '../layout/layout.ts';
import type { Position } from '../layout/position.ts';
import { toNumber } from '../quantity/fraction.ts';
import { type EarlierStates, NO_PAST } from './past.ts';
import { fitTrend, type TrendFit } from './trendFit.ts';
import { type Followed, linePoints, pointOf, type TrendPoint } from './trendPoint.ts';
import { type Unlikeness, unlikeness } from './unlike.ts';

/** What a trend is drawn over: running hours, or days since 1970-01-01. */
export type TrendAxis = 'hours' | 'date';

/** One part at one position, from when it was fitted or machined until it was changed. */
export interface TrendLine {
  readonly row: Row;
  readonly followed: Followed;
  /** By x. */
  readonly points: readonly TrendPoint[];
  /** What ended the line before it, such as `main shells replaced`; undefined for the first. */
  readonly startedBy: string | undefined;
  /** In what its readings are not like for like. */
  readonly unlike: readonly Unlikeness[];
  /** The sides that decide in the long run: wear limits, else those of new parts. */
  readonly limits: Readonly<Record<Side, SideLimit | undefined>>;
  readonly fit: TrendFit;
}

export interface Trend {
  readonly characteristic: Characteristic;
  readonly axis: TrendAxis;
  /** Sessions that measured it and say no hours, where others do: then dates are taken. */
  readonly withoutHours: readonly SessionDocument[];
  /** By position, the older line first. */
  readonly lines: readonly TrendLine[];
  /** Which of the sessions do not stand any more, and which values were corrected. */
  readonly past: EarlierStates;
}

/** An engine and the sessions to be followed, by their dates. */
export interface Sessions {
  readonly engine: Engine;
  readonly sessions: readonly MeasuredSession[];
}

/** One characteristic across the sessions of an engine, a line for each part that was measured at a position. */
export function trendOf(
  { engine, sessions }: Sessions,
  registry: Registry,
  characteristic: Characteristic,
  asked?: TrendAxis,
  past: EarlierStates = NO_PAST,
): Trend {
  const measured = sessions.flatMap((session) => {
    const rows = session.rows.filter(
      (row) => row.characteristic.id === characteristic.id && row.routes.length > 0,
    );
    return rows.length === 0 ? [] : [{ session, rows }];
  });
  const withoutHours = measured.flatMap(({ session: { session } }) =>
    session.hours === undefined ? [session] : [],
  );
  const axis = asked ?? (withoutHours.length === 0 ? 'hours' : 'date');
  const onAxis = measured.filter(({ session }) => xOf(session.session, axis) !== undefined);
  const positions = [
    ...new Map(onAxis.flatMap(({ rows }) => rows.map(({ position }) => [position.key, position]))).values(),
  ];
  const isMixed = withoutHours.length < measured.length;
  return {
    characteristic,
    axis,
    withoutHours: isMixed ? withoutHours : [],
    lines: positions
      .sort(inOrderOf(engine.document.layout, characteristic.family))
      .flatMap((position) =>
        linesAt(position, sessions, characteristic, registry, engine.document.layout, axis),
      ),
    past,
  };
}

const MILLISECONDS_A_DAY = 86_400_000;

function xOf(session: SessionDocument, axis: TrendAxis): number | undefined {
  if (axis === 'date') return Date.parse(`${session.date}T00:00:00Z`) / MILLISECONDS_A_DAY;
  return session.hours === undefined ? undefined : toNumber(session.hours.amount);
}

/** The day of a date axis as text. */
export const dayText = (x: number): string => {
  const date = new Date(Math.round(x) * MILLISECONDS_A_DAY);
  return Number.isNaN(date.getTime()) ? 'beyond the calendar' : date.toISOString().slice(0, 10);
};

interface Segment {
  readonly startedBy: string | undefined;
  readonly found: { readonly row: Row; readonly session: SessionDocument }[];
}

/** A session that measured nothing here may still say that the part was changed. */
function linesAt(
  position: Position,
  sessions: readonly MeasuredSession[],
  characteristic: Characteristic,
  registry: Registry,
  layout: Layout,
  axis: TrendAxis,
): readonly TrendLine[] {
  const segments: Segment[] = [{ startedBy: undefined, found: [] }];
  for (const [index, { session, rows }] of sessions.entries()) {
    const earlier = sessions.slice(0, index).map((each) => each.session);
    const startedBy = partHistoryStart(session, earlier, characteristic, position, registry, layout);
    if (startedBy !== undefined) segments.push({ startedBy, found: [] });
    const row = rows.find(
      (each) => each.characteristic.id === characteristic.id && each.position.key === position.key,
    );
    if (row !== undefined && row.routes.length > 0 && xOf(session, axis) !== undefined) {
      segments.at(-1)?.found.push({ row, session });
    }
  }
  return segments.flatMap((segment) => lineOf(segment, axis) ?? []);
}

function lineOf({ startedBy, found }: Segment, axis: TrendAxis): TrendLine | undefined {
  const latest = found.at(-1);
  if (latest === undefined) return undefined;
  const limits = limitsOf(latest.row);
  const followed = followedOf(limits);
  const points = found
    .flatMap((each) => {
      const [judged] = each.row.routes;
      const x = xOf(each.session, axis);
      return judged === undefined || x === undefined ? [] : [pointOf(x, judged, followed, each, latest.row)];
    })
    .sort((a, b) => a.x - b.x);
  const unlike = found.slice(1).flatMap((each, index) => unlikeness(found[index] ?? each, each));
  return {
    row: latest.row,
    followed,
    points,
    startedBy,
    unlike: [...new Set(unlike)],
    limits,
    fit: fitTrend(linePoints(points), { min: heightOf(limits.min), max: heightOf(limits.max) }),
  };
}

const heightOf = (limit: SideLimit | undefined): number | undefined => limit && toNumber(limit.amount);

function limitsOf({ limits: { bands } }: Row): TrendLine['limits'] {
  const side = (which: Side): SideLimit | undefined => bands.wear?.[which] ?? bands.new?.[which];
  // A wear limit on one side says which way it wears; the other side of new parts then limits nothing.
  const isOneSided = bands.wear !== undefined;
  return {
    min: isOneSided ? bands.wear?.min : side('min'),
    max: isOneSided ? bands.wear?.max : side('max'),
  };
}

const followedOf = ({ min, max }: TrendLine['limits']): Followed =>
  min === undefined && max !== undefined
    ? 'greatest'
    : min !== undefined && max === undefined
      ? 'least'
      : 'mean';
