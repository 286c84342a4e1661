import type { Engine } from '../documents/assemble.ts';
import type { Concession } from '../documents/concessions.ts';
import type { SessionDocument } from '../documents/session.ts';
import { compare } from '../quantity/fraction.ts';
import type { Unit } from '../quantity/units.ts';
import type { ConcessionInForce } from './concessionInForce.ts';
import { type Finding, type FindingKind, finding } from './finding.ts';
import { named, printingOf, readingText } from './readings.ts';
import type { Row } from './row.ts';

const ACCEPTED: FindingKind = {
  code: 'reading/accepted',
  severity: 'remark',
  means: 'The value is out, and a concession accepts it up to a stated value.',
  matters: 'The number stays in sight: somebody answers for it, with a reason.',
  usually: 'See to its follow-up, and renew or withdraw the concession at the next session.',
  example:
    'cylinder taper 1: 0.0026 in is accepted up to 0.0030 (teardown 2026-02-03, RK): Standby engine; run until the spring overhaul.',
};
const EXCEEDED: FindingKind = {
  code: 'concession/exceeded',
  severity: 'error',
  means: 'The value is out and lies beyond what the concession for it accepts.',
  matters: 'What was accepted was less than what is there now.',
  usually: 'Measure again; then machine or renew the part, or agree on the new value and record it.',
  example: 'cylinder taper 1: 0.0040 in is accepted only up to 0.0030 (teardown 2026-02-03, RK)',
};
const EXPIRED: FindingKind = {
  code: 'concession/expired',
  severity: 'warning',
  means: 'The value is out, and the concession that covered it ended before the date of this session.',
  matters: 'A deviation that was accepted for a time is easily kept for good.',
  usually: 'Do what was put off, or agree on it again in this session.',
  example: 'cylinder taper 1: 0.0027 in was accepted until 2026-04-30',
};
const UNUSED: FindingKind = {
  code: 'concession/unused',
  severity: 'warning',
  means: 'A concession stands for a value that is not out, or was not measured, in its session.',
  matters: 'It would cover a later fault that nobody has looked at.',
  usually: 'Take it out, or correct its characteristic or position.',
  example: 'the concession for cylinder_taper at 1 covers nothing: it is not out but ok',
};

export const concessionKinds: readonly FindingKind[] = [ACCEPTED, EXCEEDED, EXPIRED, UNUSED];

/** A session's own concessions, and those of earlier sessions that say until when they hold. */
export function concessionsFor(engine: Engine, session: SessionDocument): readonly ConcessionInForce[] {
  const index = engine.sessions.indexOf(session);
  const earlier = engine.sessions.slice(0, Math.max(0, index)).flatMap((from) =>
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

/** A row that is out becomes accepted where a concession in force reaches as far as it lies. */
export function withConcession(row: Row, inForce: readonly ConcessionInForce[]): Row {
  if (row.judgement.verdict !== 'out') return row;
  const found = inForce.find((each) => !each.isOver && bearsOn(each, row));
  if (found === undefined) return row;
  const verdict = accepts(found.concession, row) ? 'accepted' : 'out';
  return { ...row, concession: found, judgement: { ...row.judgement, verdict } };
}

const bearsOn = ({ concession }: ConcessionInForce, { characteristic, position }: Row): boolean =>
  concession.measure.id === characteristic.id && concession.positions.includes(position);

/** On the side on which the value is out; a concession that says nothing of that side accepts nothing there. */
function accepts({ upTo, downTo }: Concession, row: Row): boolean {
  const [judged] = row.routes;
  const side = row.judgement.past?.side;
  if (judged === undefined || side === undefined) return false;
  return side === 'max'
    ? upTo !== undefined && compare(judged.greatest, upTo.amount) <= 0
    : downTo !== undefined && compare(judged.least, downTo.amount) >= 0;
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
  const printing = printingOf(row, unitFor);
  const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name}`;
  const about = {
    measure: row.characteristic.id,
    position: row.position,
    limitPlace: row.judgement.past?.limit.place,
  };
  if (row.concession !== undefined) {
    const { concession, from } = row.concession;
    const stated = `${statedValue(concession)} (${from.stage} ${from.date}${concession.by === undefined ? '' : `, ${concession.by}`})`;
    return verdict === 'accepted'
      ? [finding(ACCEPTED, row.place, `${reading} is accepted ${stated}: ${concession.reason}`, about)]
      : [finding(EXCEEDED, concession.place, `${reading} is accepted only ${stated}`, about)];
  }
  return inForce
    .filter((each) => each.isOver && bearsOn(each, row))
    .slice(0, 1)
    .map(({ concession }) =>
      finding(EXPIRED, row.place, `${reading} was accepted until ${concession.until}`, about),
    );
}

const statedValue = ({ upTo, downTo }: Concession): string =>
  [upTo && `up to ${upTo.written}`, downTo && `down to ${downTo.written}`].filter(Boolean).join(' and ');

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
    const message = `the concession for ${concession.measure.id} at ${position} covers nothing: it ${why}`;
    return [finding(UNUSED, concession.place, message, { measure: concession.measure.id, position })];
  });
}
