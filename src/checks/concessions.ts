import { withUnit } from '../documents/amount.ts';
import type { Engine } from '../documents/assemble.ts';
import type { Concession } from '../documents/concessions.ts';
import { nameAt } from '../documents/measure.ts';
import type { SessionDocument } from '../documents/session.ts';
import { formatDistance } from '../quantity/format.ts';
import { compare, subtract } from '../quantity/fraction.ts';
import type { Unit } from '../quantity/units.ts';
import type { ConcessionInForce } from './concessionInForce.ts';
import { sessionsBefore } from './earlier.ts';
import { type Finding, type FindingKind, finding } from './finding.ts';
import { named, type Printing, printingOf, readingText } from './readings.ts';
import type { Row } from './row.ts';
import type { Side } from './verdict.ts';

const ACCEPTED: FindingKind = {
  code: 'reading/accepted',
  severity: 'remark',
  means: 'The value is out, and a concession accepts it up to a stated value.',
  matters: 'The number stays in sight: somebody answers for it, with a reason.',
  usually: 'See to its follow-up, and renew or withdraw the concession at the next session.',
  example:
    'cylinder taper 1: 0.0026 in is accepted up to 0.0030 in (teardown 2026-02-03, RK): Standby engine; run until the spring overhaul.',
};
const EXCEEDED: FindingKind = {
  code: 'concession/exceeded',
  severity: 'error',
  means: 'The value is out and lies beyond what the concession for it accepts.',
  matters: 'What was accepted was less than what is there now.',
  usually: 'Measure again; then machine or renew the part, or agree on the new value and record it.',
  example:
    'cylinder taper 1 was accepted up to 0.0030 in (teardown 2026-02-03, RK): it lies 1 thou beyond that',
};
const EXPIRED: FindingKind = {
  code: 'concession/expired',
  severity: 'warning',
  means: 'The value is out, and the concession that covered it ended before the date of this session.',
  matters: 'A deviation that was accepted for a time is easily kept for good.',
  usually: 'Do what was put off, or agree on it again in this session.',
  example: 'cylinder taper 1 was accepted up to 0.0030 in (teardown 2026-02-03, RK), until 2026-04-30',
};
const UNUSED: FindingKind = {
  code: 'concession/unused',
  severity: 'warning',
  means: 'A concession stands for a value that is not out, or was not measured, in its session.',
  matters: 'It would cover a later fault that nobody has looked at.',
  usually: 'Take it out, or correct its characteristic or position.',
  example: 'the concession for cylinder taper 1 covers nothing: it is not out but ok',
};

export const concessionKinds: readonly FindingKind[] = [ACCEPTED, EXCEEDED, EXPIRED, UNUSED];

/** A session's own concessions, and those of earlier sessions that say until when they hold. */
export function concessionsFor(engine: Engine, session: SessionDocument): readonly ConcessionInForce[] {
  const earlier = sessionsBefore(engine, session).flatMap((from) =>
    from.concessions
      .filter((each) => each.until !== undefined)
      .map((concession) => ({
        concession,
        isOwn: false,
        isOver: (concession.until ?? '') < session.date,
        from,
      })),
  );
  const own = session.concessions.map((concession) => ({
    concession,
    isOwn: true,
    isOver: false,
    from: session,
  }));
  return [...own, ...earlier.reverse()];
}

/**
 * A row that is out becomes accepted where concessions in force reach as far as it lies, on each side on which it is
 * out; of several for one position any may do it.
 */
export function withConcession(row: Row, inForce: readonly ConcessionInForce[]): Row {
  const side = row.judgement.past?.side;
  if (row.judgement.verdict !== 'out' || side === undefined) return row;
  const bearing = inForce.filter((each) => !each.isOver && bearsOn(each, row));
  const accepting = (of: Side): ConcessionInForce | undefined =>
    bearing.find(({ concession }) => accepts(concession, row, of));
  const found = accepting(side) ?? bearing.find(({ concession }) => reachOf(concession, side)) ?? bearing[0];
  if (found === undefined) return row;
  const isAccepted = outSides(row).every((of) => accepting(of) !== undefined);
  return {
    ...row,
    concession: found,
    judgement: { ...row.judgement, verdict: isAccepted ? 'accepted' : 'out' },
  };
}

const bearsOn = ({ concession }: ConcessionInForce, { characteristic, position }: Row): boolean =>
  concession.measure.id === characteristic.id && concession.positions.includes(position);

const reachOf = ({ upTo, downTo }: Concession, side: Side): Concession['upTo'] =>
  side === 'max' ? upTo : downTo;

/** A concession that says nothing of a side accepts nothing there. */
function accepts(concession: Concession, row: Row, side: Side): boolean {
  const [judged] = row.routes;
  const reach = reachOf(concession, side);
  if (judged === undefined || reach === undefined) return false;
  return side === 'max'
    ? compare(judged.greatest, reach.amount) <= 0
    : compare(judged.least, reach.amount) >= 0;
}

function outSides({ routes, judgement }: Row): readonly Side[] {
  const [judged] = routes;
  const { min, max } = judgement.deciding;
  if (judged === undefined) return [];
  return [
    ...(max !== undefined && compare(judged.greatest, max.amount) > 0 ? (['max'] as const) : []),
    ...(min !== undefined && compare(judged.least, min.amount) < 0 ? (['min'] as const) : []),
  ];
}

export const concessionFindings = (
  rows: readonly Row[],
  inForce: readonly ConcessionInForce[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] => [
  ...rows.flatMap((row) => rowFindings(row, inForce, unitFor)),
  ...inForce.filter((each) => each.isOwn).flatMap(({ concession }) => unusedOf(concession, rows)),
];

function rowFindings(
  row: Row,
  inForce: readonly ConcessionInForce[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  const { verdict } = row.judgement;
  const [judged] = row.routes;
  if (judged === undefined || (verdict !== 'accepted' && verdict !== 'out')) return [];
  const about = {
    measure: row.characteristic.id,
    position: row.position,
    limitPlace: row.judgement.past?.limit.place,
  };
  const printing = printingOf(row, unitFor);
  if (row.concession !== undefined) {
    const { concession } = row.concession;
    const stated = statedText(row.concession);
    if (verdict === 'out') {
      const message = `${named(row)} was accepted ${stated}: ${beyondText(concession, row, printing)}`;
      return [finding(EXCEEDED, concession.place, message, about)];
    }
    const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name}`;
    return [finding(ACCEPTED, row.place, `${reading} is accepted ${stated}: ${concession.reason}`, about)];
  }
  return inForce
    .filter((each) => each.isOver && bearsOn(each, row))
    .slice(0, 1)
    .map((each) => {
      const message = `${named(row)} was accepted ${statedText(each)}, until ${each.concession.until}`;
      return finding(EXPIRED, row.place, message, about);
    });
}

/** `up to 0.0030 in (teardown 2026-02-03, RK)`. */
function statedText({ concession: { upTo, downTo, by }, from }: ConcessionInForce): string {
  const values = [upTo && `up to ${withUnit(upTo)}`, downTo && `down to ${withUnit(downTo)}`].filter(Boolean);
  return `${values.join(' and ')} (${from.stage} ${from.date}${by === undefined ? '' : `, ${by}`})`;
}

/** What the reading's own finding does not say: how far it lies beyond what was accepted. */
function beyondText({ upTo, downTo }: Concession, row: Row, { unit, decimals }: Printing): string {
  const [judged] = row.routes;
  const side = row.judgement.past?.side;
  const stated = side === 'max' ? upTo : downTo;
  if (judged === undefined || stated === undefined) return 'it lies on the other side';
  const by =
    side === 'max' ? subtract(judged.greatest, stated.amount) : subtract(stated.amount, judged.least);
  return `it lies ${formatDistance(by, unit, decimals)} beyond that`;
}

function unusedOf(concession: Concession, rows: readonly Row[]): readonly Finding[] {
  return concession.positions.flatMap((position) => {
    const row = rows.find(
      (each) => each.characteristic.id === concession.measure.id && each.position === position,
    );
    const verdict = row?.judgement.verdict;
    if (verdict === 'accepted' || verdict === 'out' || verdict === 'undecided') return [];
    const why =
      row === undefined || row.routes.length === 0
        ? 'was not measured'
        : `is not out but ${verdict ?? 'without limits'}`;
    const message = `the concession for ${nameAt(concession.measure, position)} covers nothing: it ${why}`;
    return [finding(UNUSED, concession.place, message, { measure: concession.measure.id, position })];
  });
}
