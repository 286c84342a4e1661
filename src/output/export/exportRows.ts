import type { EngineReport, ReportedSession } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { unitOf } from '../../checks/judge/session.ts';
import type { SideLimit } from '../../checks/judge/sideLimit.ts';
import { leavesOf } from '../../checks/value/route.ts';
import type { PositionReading, ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import { inSi, siName } from '../../quantity/si.ts';
import { fromBase, type Quantity, type Unit } from '../../quantity/units.ts';
import { AXIS_COLUMNS, type ExportRow } from './exportRow.ts';
import { markAt } from './markAt.ts';

/** Every reading of an engine, and every judged value of each of its sessions, a row each. */
export const exportRows = (report: EngineReport, commit: string | undefined): readonly ExportRow[] =>
  report.sessions.flatMap((reported) => {
    const { session } = reported;
    const shared = { ...sessionCells(session, report), commit: commit ?? null };
    return [
      ...session.blocks.flatMap((block) => readingRows(block, session, report, shared)),
      ...judgedRows(reported, report, shared),
    ];
  });

const sessionCells = (session: SessionDocument, { engine }: EngineReport): ExportRow => ({
  engine: engine.folder,
  engine_name: engine.document.name,
  session: session.path,
  stage: session.stage,
  date: session.date,
  hours: session.hours === undefined ? null : toNumber(session.hours.amount),
  by: session.by ?? null,
});

const placeCells = (position: Position, half?: string): ExportRow => ({
  position: position.family.isSingle ? null : position.name,
  ...Object.fromEntries(
    AXIS_COLUMNS.map(({ axis, column }) => {
      const index = position.family.axes.indexOf(axis);
      return [column, index < 0 ? null : (position.coordinates[index] ?? null)];
    }),
  ),
  half: half ?? null,
});

const valueCells = (amount: Fraction, quantity: Quantity, unit: Unit): ExportRow => ({
  value: numberIn(amount, unit),
  unit: unit.name,
  value_si: inSi(amount, quantity),
  unit_si: siName(quantity),
});

const numberIn = (amount: Fraction, unit: Unit): number => toNumber(fromBase(amount, unit));

function readingRows(
  block: ReadingBlock,
  session: SessionDocument,
  report: EngineReport,
  shared: ExportRow,
): readonly ExportRow[] {
  const { measure, instrument, setWith } = block;
  const unit = unitOf(measure.quantity, report.engine);
  const instruments = [instrument, setWith].flatMap((each) => each?.name ?? []);
  return block.positions.flatMap((reading) =>
    pointCells(reading).map(({ point, ...along }) => ({
      ...shared,
      row: 'reading',
      date: block.date ?? session.date,
      machine_shop: block.from ?? null,
      measure: measure.id,
      quantity: measure.quantity,
      ...placeCells(reading.position),
      ...along,
      part_mark: markAt(measure.id, reading.position, session, report) ?? null,
      written: point.written,
      ...valueCells(point.amount, measure.quantity, unit),
      instrument: instruments.length === 0 ? null : instruments.join(', '),
    })),
  );
}

/** Each point with where along the part and round it. */
const pointCells = ({ rows, stations, directions }: PositionReading) =>
  rows.flatMap((row, at) =>
    row.flatMap((point, round) =>
      point === undefined
        ? []
        : [{ point, station: stations[at]?.name ?? null, direction: directions[round] ?? null }],
    ),
  );

const judgedRows = (
  { rows, session }: ReportedSession,
  report: EngineReport,
  shared: ExportRow,
): readonly ExportRow[] =>
  rows.flatMap((row) => (row.routes.length === 0 ? [] : [judgedRow(row, session, report, shared)]));

function judgedRow(row: Row, session: SessionDocument, report: EngineReport, shared: ExportRow): ExportRow {
  const { characteristic, position, half, judgement } = row;
  const { quantity, id } = characteristic;
  const unit = unitOf(quantity, report.engine);
  const [judged] = row.routes;
  if (judged === undefined) throw new RangeError(`${id} has no value`);
  const leaves = leavesOf(judged.route);
  const instruments = [...new Set(leaves.flatMap((leaf) => leaf.with))];
  const shops = [...new Set(leaves.flatMap(({ block }) => block?.from ?? []))];
  return {
    ...shared,
    row: 'judged',
    machine_shop: shops.length === 0 ? null : shops.join(', '),
    measure: id,
    quantity,
    ...placeCells(position, half),
    part_mark: markAt(id, position, session, report) ?? null,
    written: judged.route.written.length === 0 ? null : judged.route.written.join(', '),
    ...valueCells(judged.mean, quantity, unit),
    least: numberIn(judged.least, unit),
    greatest: numberIn(judged.greatest, unit),
    expanded_uncertainty: judged.route.expanded / toNumber(unit.factor),
    ...limitCells('limit_min', judgement.deciding.min, unit),
    ...limitCells('limit_max', judgement.deciding.max, unit),
    verdict: judgement.verdict,
    instrument: instruments.length === 0 ? null : instruments.join(', '),
    route: judged.route.name,
  };
}

const limitCells = (name: string, limit: SideLimit | undefined, unit: Unit): ExportRow => ({
  [name]: limit === undefined ? null : numberIn(limit.amount, unit),
  [`${name}_band`]: limit?.band ?? null,
});
