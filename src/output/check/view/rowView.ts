import { type Printing, pastText, plusMinus, readingText } from '../../../checks/findings/readings.ts';
import type { ReportedSession } from '../../../checks/judge/report.ts';
import type { JudgedRoute, Row } from '../../../checks/judge/row.ts';
import type { Verdict } from '../../../checks/judge/verdict.ts';
import type { EarlierRow } from '../../../checks/state/lastKnown.ts';
import { warmthNote } from '../../../checks/value/blockWarmth.ts';
import { tableName } from '../../../layout/naming.ts';
import type { PictureOf } from '../../terminal/picture.ts';
import { agreementText } from '../agreementText.ts';
import { hotNote } from '../hotText.ts';
import { pinHeading } from '../pinGroups.ts';
import { putRightNote } from '../putRightText.ts';
import { leftToCutText } from './leftToCutText.ts';
import { type Extent, pictureOf } from './rowPicture.ts';

/** A row of a table in words, as plain data; where and how they stand is left to a format. */
export interface RowView {
  /** Null where nothing limits the value. */
  readonly given: Verdict | null;
  /** Of the first of several that run on one pin: which they are. */
  readonly group: string | undefined;
  readonly position: string;
  /** The position with the shop's label for it. */
  readonly where: string;
  /** With the side and the distance; empty where nothing limits the value. */
  readonly verdict: string;
  /** `limit within ±0.00016`, where a deciding one lies that near; else empty. */
  readonly near: string;
  /** Limits that most rows of the table do not have. */
  readonly limits: string;
  /** The judged one first, then other ways to the same thing; none where it is missing. */
  readonly values: readonly ValueView[];
  /** Of one without a value why it was left out on purpose, and what was there once and holds no longer. */
  readonly instead: string;
}

export interface ValueView {
  /** Where it lies between the limits that decide, in base units. */
  readonly picture: PictureOf;
  readonly reading: string;
  /** What it was before, when it was read, and what was said of it. */
  readonly notes: readonly string[];
  /** Of another route, how well it agrees with the judged one. */
  readonly agreement: string;
  /** Where details were asked for: the uncertainty, and the route with its instruments. */
  readonly uncertainty: string;
  readonly from: string;
}

interface Around {
  readonly session: ReportedSession;
  readonly printing: Printing;
  readonly span: Extent;
  readonly above: Row | undefined;
  readonly limits: string;
  readonly detail: boolean;
}

export function rowView(row: Row, { session, printing, span, above, limits, detail }: Around): RowView {
  return {
    given: row.judgement.verdict,
    group: pinHeading(row, above),
    position: row.position.name,
    where: positionText(row),
    verdict: distanceText(row, printing),
    near: marginalText(row, printing),
    limits,
    values: row.routes.map((route, index) => ({
      picture: pictureOf(row, route, span),
      reading: readingText(route, printing),
      notes: index === 0 ? notesOf(row, route, { session, printing, detail }) : [],
      agreement: index === 0 ? '' : `${route.route.name}${agreementText(route)}`,
      // What was counted or seen has none.
      uncertainty: detail && route.route.u > 0 ? plusMinus(route.route, printing.unit) : '',
      from: detail ? `${route.route.name}, ${route.route.with.join(', ')}` : '',
    })),
    instead: row.routes.length === 0 ? insteadText(row, session.before(row), printing) : '',
  };
}

export const positionText = ({ position, half }: Row): string =>
  [tableName(position), half ?? ''].join(' ').trim();

/** The verdict in words, with the side and the distance, and whether a limit is near. */
export const verdictText = (row: Row, printing: Printing): string =>
  [distanceText(row, printing), marginalText(row, printing)].filter(Boolean).join(', ');

function notesOf(
  row: Row,
  { route }: JudgedRoute,
  { session, printing, detail }: Pick<Around, 'session' | 'printing' | 'detail'>,
): readonly string[] {
  const { takenFrom, notes, warmth } = route;
  const held = takenFrom === undefined ? '' : `read ${takenFrom}`;
  const hot = detail ? hotNote(row, printing) : '';
  const before = beforeText(row, session, printing);
  const putRight = putRightNote(route, printing.unit);
  return [
    held,
    before,
    ...notes,
    ...warmthNote(warmth),
    ...putRight,
    hot,
    leftToCutText(row, printing),
  ].filter(Boolean);
}

function distanceText(row: Row, printing: Printing): string {
  const { verdict, past } = row.judgement;
  const [judged] = row.routes;
  if (verdict === null) return '';
  if (judged === undefined) return verdict;
  const u = plusMinus(judged.route, printing.unit);
  if (verdict === 'undecided') return `undecided at ${u}`;
  return past === undefined ? verdict : `${verdict}, ${pastText(row, printing)}`;
}

function marginalText({ judgement, routes: [judged] }: Row, { unit }: Printing): string {
  const { marginal, verdict } = judgement;
  if (!marginal || judged === undefined || verdict === null || verdict === 'undecided') return '';
  return `limit within ${plusMinus(judged.route, unit)}`;
}

const insteadText = ({ notTaken }: Row, earlier: EarlierRow | undefined, printing: Printing): string =>
  [notTaken?.reason, lastKnownText(earlier, printing)].filter(Boolean).join('; ');

function lastKnownText(earlier: EarlierRow | undefined, printing: Printing): string {
  const [judged] = earlier?.row.routes ?? [];
  return judged === undefined ? '' : `last known ${readingText(judged, printing)} on ${earlier?.date}`;
}

function beforeText(row: Row, session: ReportedSession, printing: Printing): string {
  const earlier = session.before(row)?.row.routes[0];
  return earlier === undefined ? '' : `was ${readingText(earlier, printing)}`;
}
