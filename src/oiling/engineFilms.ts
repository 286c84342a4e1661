import type { EngineReport, ReportedSession } from '../checks/judge/report.ts';
import type { Row } from '../checks/judge/row.ts';
import type { EarlierRow } from '../checks/state/lastKnown.ts';
import { toNumber } from '../quantity/fraction.ts';
import { type Bearings, bearingsOf, type MeasuredFilm, measuredFilm } from './bearingFilm.ts';
import { BEARING_KINDS, type BearingKind } from './bearingKind.ts';
import type { Supply } from './supply.ts';

export interface KindFilms {
  readonly kind: BearingKind;
  /** All but their clearance, or what has to be stated first. */
  readonly bearings: Bearings | { readonly lacking: readonly string[] };
  readonly films: readonly FilmThenAndNow[];
  /** Positions whose clearance is not sure to be above zero. */
  readonly without: readonly Row[];
}

export interface FilmThenAndNow {
  readonly now: MeasuredFilm;
  /** With the clearance that a teardown before found there. */
  readonly before: { readonly film: MeasuredFilm; readonly date: string } | undefined;
}

/** The films of every kind of bearing that was measured, or of one. */
export function engineFilms(
  report: EngineReport,
  shown: ReportedSession,
  supply: Supply,
  measure?: string,
): readonly KindFilms[] {
  return BEARING_KINDS.filter((kind) => measure === undefined || kind.measure === measure).flatMap((kind) => {
    const rows = shown.rows.filter(
      ({ characteristic, routes }) => characteristic.id === kind.measure && routes.length > 0,
    );
    return rows.length === 0 ? [] : [kindFilms(kind, rows, report, shown, supply)];
  });
}

function kindFilms(
  kind: BearingKind,
  rows: readonly Row[],
  report: EngineReport,
  shown: ReportedSession,
  supply: Supply,
): KindFilms {
  const bearings = bearingsOf(kind, report.engine, supply);
  if ('lacking' in bearings) return { kind, bearings, films: [], without: [] };
  const found = rows.map((row) => ({ row, film: measuredFilm(bearings, row) }));
  return {
    kind,
    bearings,
    films: found.flatMap(({ row, film }) =>
      film === undefined
        ? []
        : [{ now: film, before: filmBefore(bearings, teardownRow(row, report, shown)) }],
    ),
    without: found.flatMap(({ row, film }) => (film === undefined ? [row] : [])),
  };
}

function filmBefore(bearings: Bearings, earlier: EarlierRow | undefined): FilmThenAndNow['before'] {
  const film = earlier && measuredFilm(bearings, earlier.row);
  return film && { film, date: earlier.date };
}

/** What the latest teardown before found there: a rebuild is held against it. */
function teardownRow(
  { characteristic, position, routes }: Row,
  { sessions }: EngineReport,
  shown: ReportedSession,
): EarlierRow | undefined {
  const readIn = routes[0]?.route.readIn ?? shown.session;
  const earlier = sessions.slice(
    0,
    sessions.findIndex(({ session }) => session === readIn),
  );
  const teardown = earlier.findLast(({ session }) => session.stage === 'teardown');
  const row = teardown?.rows.find(
    (each) =>
      each.characteristic.id === characteristic.id && each.position === position && each.routes.length > 0,
  );
  return row && teardown && { row, date: teardown.session.date };
}

/** The oil that all these bearings take together, in m³/s, and the one that takes most. */
export interface Demand {
  readonly least: number;
  readonly flow: number;
  readonly greatest: number;
  readonly most: MeasuredFilm;
  readonly count: number;
}

export function demandOf(kinds: readonly KindFilms[]): Demand | undefined {
  const films = kinds.flatMap(({ films: of }) => of.map(({ now }) => now));
  const [first, ...rest] = films;
  if (first === undefined) return undefined;
  const total = (flow: (film: MeasuredFilm) => number): number =>
    films.reduce((sum, film) => sum + flow(film), 0);
  return {
    least: total(({ spreads }) => spreads.flow.least),
    flow: total(({ figures }) => figures.flow),
    greatest: total(({ spreads }) => spreads.flow.greatest),
    most: rest.reduce((most, each) => (each.figures.flow > most.figures.flow ? each : most), first),
    count: films.length,
  };
}

/** What the pump delivers, in m³/s. */
export const deliveryOf = ({ engine: { document } }: EngineReport): number | undefined =>
  document.duty.pumpDelivery && toNumber(document.duty.pumpDelivery.amount) / 60_000;
