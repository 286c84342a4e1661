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
import { type Fraction, toNumber } from '../quantity/fraction.ts';
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

/** A session that is followed, of whatever engine: a part goes from one to another. */
export interface FollowedSession extends MeasuredSession {
  readonly engine: Engine;
  readonly registry: Registry;
  /** Over which it is drawn: of the engine, or of the part itself. */
  readonly hours: Fraction | undefined;
}

/** One characteristic across the sessions of an engine, a line for each part that was measured at a position. */
export const trendOf = (
  { engine, sessions }: Sessions,
  registry: Registry,
  characteristic: Characteristic,
  asked?: TrendAxis,
  past: EarlierStates = NO_PAST,
): Trend =>
  trendOfFollowed(
    sessions.map((each) => ({ ...each, engine, registry, hours: each.session.hours?.amount })),
    engine.document.layout,
    characteristic,
    asked,
    past,
  );

/** Of several engines positions of one name are one. */
export function trendOfFollowed(
  followed: readonly FollowedSession[],
  layout: Layout,
  characteristic: Characteristic,
  asked?: TrendAxis,
  past: EarlierStates = NO_PAST,
): Trend {
  const rowsOf = ({ rows }: FollowedSession): readonly Row[] =>
    rows.filter((row) => row.characteristic.id === characteristic.id && row.routes.length > 0);
  const measured = followed.filter((each) => rowsOf(each).length > 0);
  const withoutHours = measured.filter(({ hours }) => hours === undefined).map(({ session }) => session);
  const axis = asked ?? (withoutHours.length === 0 ? 'hours' : 'date');
  const rows = measured.filter((each) => xOf(each, axis) !== undefined).flatMap(rowsOf);
  const positions = [...new Map(rows.map(({ position }) => [position.key, position])).values()];
  const isMixed = withoutHours.length < measured.length;
  return {
    characteristic,
    axis,
    withoutHours: isMixed ? withoutHours : [],
    lines: positions
      .sort(inOrderOf(layout, characteristic.family))
      .flatMap((position) => linesAt(position, followed, characteristic, axis)),
    past,
  };
}

const MILLISECONDS_A_DAY = 86_400_000;

function xOf({ session, hours }: FollowedSession, axis: TrendAxis): number | undefined {
  if (axis === 'date') return Date.parse(`${session.date}T00:00:00Z`) / MILLISECONDS_A_DAY;
  return hours === undefined ? undefined : toNumber(hours);
}

/** The day of a date axis as text. */
export const dayText = (x: number): string => {
  const date = new Date(Math.round(x) * MILLISECONDS_A_DAY);
  return Number.isNaN(date.getTime()) ? 'beyond the calendar' : date.toISOString().slice(0, 10);
};

interface Segment {
  readonly startedBy: string | undefined;
  readonly found: { readonly row: Row; readonly session: SessionDocument; readonly x: number }[];
}

/** A session that measured nothing here may still say that the part was changed. */
function linesAt(
  position: Position,
  followed: readonly FollowedSession[],
  characteristic: Characteristic,
  axis: TrendAxis,
): readonly TrendLine[] {
  const segments: Segment[] = [{ startedBy: undefined, found: [] }];
  for (const [index, each] of followed.entries()) {
    const { session, rows, engine, registry } = each;
    const earlier = followed.slice(0, index).map((before) => before.session);
    const { layout } = engine.document;
    const here = layout.withKey(characteristic.family, position.key);
    const startedBy = partHistoryStart(session, earlier, characteristic, here, registry, layout);
    if (startedBy !== undefined) segments.push({ startedBy, found: [] });
    const row = rows.find(
      (one) => one.characteristic.id === characteristic.id && one.position.key === position.key,
    );
    const x = xOf(each, axis);
    if (row !== undefined && row.routes.length > 0 && x !== undefined)
      segments.at(-1)?.found.push({ row, session, x });
  }
  return segments.flatMap((segment) => lineOf(segment) ?? []);
}

function lineOf({ startedBy, found }: Segment): TrendLine | undefined {
  const latest = found.at(-1);
  if (latest === undefined) return undefined;
  const limits = limitsOf(latest.row);
  const followed = followedOf(limits);
  const points = found
    .flatMap((each) => {
      const [judged] = each.row.routes;
      return judged === undefined ? [] : [pointOf(each.x, judged, followed, each, latest.row)];
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

/** Of a row by itself. */
export const followedIn = (row: Row): Followed => followedOf(limitsOf(row));

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
