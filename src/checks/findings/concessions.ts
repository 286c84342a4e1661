import { withUnit } from '../../documents/amount.ts';
import { nameAt } from '../../documents/measure.ts';
import type { Concession } from '../../documents/session/concessions.ts';
import { formatDistance } from '../../quantity/format.ts';
import { subtract } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { bearsOn, reachOf } from '../judge/applyConcessions.ts';
import type { ConcessionInForce, ConcessionOfSide } from '../judge/concessionInForce.ts';
import type { Row } from '../judge/row.ts';
import { amountText, named, type Printing, printingOf } from './readings.ts';

const ACCEPTED: FindingKind = {
  code: 'reading/accepted',
  severity: 'remark',
  means: 'The value is out, and a concession accepts it up to a stated value.',
  matters: 'The value stays visible, with the person who decided and the reason.',
  usually: 'Do its follow-up, and renew or withdraw the concession at the next session.',
  example:
    'cylinder taper 1: 0.0026 in is accepted up to 0.0030 in (teardown 2026-02-03, RK; agreed by the owner): Standby engine; run until the spring overhaul.',
};
const EXCEEDED: FindingKind = {
  code: 'concession/exceeded',
  severity: 'error',
  means: 'The value is out, and it is beyond the value that the concession accepts.',
  matters: 'The consent was for a smaller deviation than the present one.',
  usually: 'Measure again; then machine or renew the part, or agree on the new value and record it.',
  example:
    'cylinder taper 1 was accepted up to 0.0030 in (teardown 2026-02-03, RK; agreed by the owner): it is 1 thou beyond that',
};
const EXPIRED: FindingKind = {
  code: 'concession/expired',
  severity: 'warning',
  means: 'The value is out, and the concession that covered it ended before the date of this session.',
  matters: 'A deviation that was accepted for a short time is easily forgotten, and stays in the engine.',
  usually: 'Put the part right now, or write a new concession in this session.',
  example:
    'cylinder taper 1 was accepted up to 0.0030 in (teardown 2026-02-03, RK; agreed by the owner) until 2026-04-30 only',
};
export const UNUSED: FindingKind = {
  code: 'concession/unused',
  severity: 'warning',
  means:
    'A concession is not used: in its session the value is not out or was not measured, or another concession covers it. Or a session accepts a warning that no session has had since the engine was opened.',
  matters: 'It stays in force, and would accept a later fault that nobody has looked at.',
  usually: 'Remove it, or correct its characteristic or position.',
  example: 'the concession for cylinder taper 1 is not used: 0.0012 in is ok',
};

const UNSIGNED: FindingKind = {
  code: 'concession/unsigned',
  severity: 'warning',
  means: 'A concession accepts a value, and does not say who decided or who agreed.',
  matters: 'A part beyond its limits goes on running, and nobody answers for that.',
  usually:
    'Write `by:` for who decided (the `by:` of the session counts as well) and `agreed:` for who agreed, such as the owner.',
  example: 'the concession for cylinder taper 1 (teardown 2026-02-03) does not say who agreed: write agreed:',
};

export const concessionKinds: readonly FindingKind[] = [ACCEPTED, EXCEEDED, EXPIRED, UNUSED, UNSIGNED];

export const concessionFindings = (
  rows: readonly Row[],
  inForce: readonly ConcessionInForce[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] => [
  ...rows.flatMap((row) => rowFindings(row, inForce, unitFor)),
  ...unsignedFindings(rows, inForce),
  ...inForce.filter((each) => each.isOwn).flatMap(({ concession }) => unusedOf(concession, rows, unitFor)),
];

function rowFindings(
  row: Row,
  inForce: readonly ConcessionInForce[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  const { verdict } = row.judgement;
  if (verdict !== 'accepted' && verdict !== 'out') return [];
  const printing = printingOf(row, unitFor);
  if (verdict === 'accepted') return acceptedFindings(row, printing);
  const short = row.concessions.filter(({ isEnough }) => !isEnough);
  return [
    ...short.map((each) => exceededFinding(row, each, printing)),
    ...expiredFindings(row, inForce, new Set(short.map(({ concession }) => concession))),
  ];
}

/** Once for each that accepts something, whatever it is of. */
function unsignedFindings(rows: readonly Row[], inForce: readonly ConcessionInForce[]): readonly Finding[] {
  const accepting = new Set(
    rows
      .filter(({ judgement }) => judgement.verdict === 'accepted')
      .flatMap((row) => row.concessions.map(({ concession }) => concession)),
  );
  return inForce
    .filter(({ concession }) => accepting.has(concession))
    .flatMap(({ concession: { measure, positions, by, agreed, place }, from }) => {
      const missing = [
        ...((by ?? from.by) === undefined ? [{ who: 'who decided', key: 'by:' }] : []),
        ...(agreed === undefined ? [{ who: 'who agreed', key: 'agreed:' }] : []),
      ];
      const [first, ...others] = positions;
      if (missing.length === 0 || first === undefined) return [];
      const of = [nameAt(measure, first), ...others.map(({ name }) => name)].join(', ');
      const [who, keys] = [missing.map((each) => each.who), missing.map(({ key }) => key)];
      const message = `the concession for ${of} (${from.stage} ${from.date}) does not say ${who.join(' or ')}: write ${keys.join(' and ')}`;
      return [finding(UNSIGNED, place, message, { measure: measure.id, position: first })];
    });
}

const about = (row: Row) => ({
  measure: row.characteristic.id,
  position: row.position,
  limitPlace: row.judgement.past?.limit.place,
});

/** One for each entry, of which one may cover both sides. */
function acceptedFindings(row: Row, printing: Printing): readonly Finding[] {
  const [judged] = row.routes;
  if (judged === undefined) return [];
  const reading = `${named(row)}: ${amountText(judged, printing)}`;
  const entries = new Map(row.concessions.map((each) => [each.concession, each]));
  return [...entries.values()].map((each) => {
    const message = `${reading} is accepted ${statedText(each)}: ${each.concession.reason}`;
    return finding(ACCEPTED, row.place, message, about(row));
  });
}

function exceededFinding(row: Row, entry: ConcessionOfSide, printing: Printing): Finding {
  const message = `${named(row)} was accepted ${statedText(entry)}: ${beyondText(entry, row, printing)}`;
  return finding(EXCEEDED, entry.concession.place, message, {
    ...about(row),
    limitPlace: row.judgement.deciding[entry.side]?.place,
  });
}

/** What ended is reported where nothing in force speaks of the side on which the row is out. */
function expiredFindings(
  row: Row,
  inForce: readonly ConcessionInForce[],
  short: ReadonlySet<Concession>,
): readonly Finding[] {
  const side = row.judgement.past?.side;
  if (side === undefined || [...short].some((each) => reachOf(each, side) !== undefined)) return [];
  return inForce
    .filter((each) => each.isOver && bearsOn(each, row) && reachOf(each.concession, side) !== undefined)
    .slice(0, 1)
    .map((each) => {
      const message = `${named(row)} was accepted ${statedText(each)} until ${each.concession.until} only`;
      return finding(EXPIRED, row.place, message, about(row));
    });
}

/** `up to 0.0030 in (teardown 2026-02-03, RK; agreed by the owner)`. */
function statedText({ concession: { upTo, downTo, by, agreed }, from }: ConcessionInForce): string {
  const values = [upTo && `up to ${withUnit(upTo)}`, downTo && `down to ${withUnit(downTo)}`].filter(Boolean);
  const decided = [`${from.stage} ${from.date}`, ...(by === undefined ? [] : [by])].join(', ');
  const agreement = agreed === undefined ? '' : `; agreed by ${agreed}`;
  return `${values.join(' and ')} (${decided}${agreement})`;
}

/** What the reading's own finding does not say: how far it lies beyond what was accepted. */
function beyondText({ concession, side }: ConcessionOfSide, row: Row, { unit, decimals }: Printing): string {
  const [judged] = row.routes;
  const stated = reachOf(concession, side);
  if (judged === undefined || stated === undefined) {
    const covers = row.concessions.some((each) => each.concession === concession && each.isEnough);
    return covers ? 'it is beyond its other limit as well' : 'it is beyond the other limit';
  }
  const by =
    side === 'max' ? subtract(judged.greatest, stated.amount) : subtract(stated.amount, judged.least);
  return `it is ${formatDistance(by, unit, decimals)} beyond that`;
}

function unusedOf(
  concession: Concession,
  rows: readonly Row[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  return concession.positions.flatMap((position) => {
    const row = rows.find(
      (each) => each.characteristic.id === concession.measure.id && each.position === position,
    );
    const why = unusedBecause(concession, row, unitFor);
    if (why === undefined) return [];
    const message = `the concession for ${nameAt(concession.measure, position)} is not used: ${why}`;
    return [finding(UNUSED, concession.place, message, { measure: concession.measure.id, position })];
  });
}

/** Nothing where it is named for its value, or could be needed: what is undecided may be out. */
function unusedBecause(
  concession: Concession,
  row: Row | undefined,
  unitFor: (row: Row) => Unit,
): string | undefined {
  const [judged] = row?.routes ?? [];
  if (row === undefined || judged === undefined) return 'the value was not measured';
  const value = amountText(judged, printingOf(row, unitFor));
  const { verdict } = row.judgement;
  if (verdict === 'undecided' || row.concessions.some((each) => each.concession === concession))
    return undefined;
  if (verdict !== 'accepted' && verdict !== 'out') return `${value} is ${verdict ?? 'without limits'}`;
  const isOfSide = row.concessions.some(({ side }) => reachOf(concession, side) !== undefined);
  if (!isOfSide) return `${value} is beyond the other limit`;
  return verdict === 'accepted'
    ? 'another concession covers the value'
    : 'another concession accepts as much or more';
}
