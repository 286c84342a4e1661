import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { formatNumber, withUnitName } from '../../quantity/format.ts';
import { greatest, least } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { Finding } from '../finding.ts';
import { printingOf } from '../findings/readings.ts';
import type { JudgingOptions, Row } from '../judge/row.ts';
import { type JudgedSession, UNMEASURED } from '../judge/session.ts';
import { measuredRows, viewOf } from '../value/measured.ts';

export interface EarlierRow {
  readonly row: Row;
  readonly date: string;
}

/** What a session read before work on the part, and has not read again: no value of it any more, and the last that is known. */
export function rowsBeforeWork(
  { session, steppedBack }: Pick<JudgedSession, 'session' | 'steppedBack'>,
  engine: Engine,
  registry: Registry,
  options: JudgingOptions,
): readonly Row[] {
  if (steppedBack.length === 0) return [];
  return measuredRows(viewOf(engine, registry, { ...session, work: [] }, options)).filter(
    ({ characteristic, position, routes }) =>
      routes.length > 0 &&
      steppedBack.some((each) => each.measure === characteristic.id && each.position === position),
  );
}

/** Of what was not measured, what is known of it from before: whoever asks what it was need not look for it. */
export const withLastKnown = (
  findings: readonly Finding[],
  lastKnown: readonly EarlierRow[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] =>
  findings.map((each) => {
    if (each.code !== UNMEASURED.code) return each;
    const known = lastKnown.filter(({ row }) => row.characteristic.id === each.measure);
    const was = knownText(known, unitFor);
    return was === undefined ? each : { ...each, message: `${each.message}; ${was}` };
  });

/** `last known 0.0085 to 0.0105 in on 2026-04-07`: over all positions, from least to greatest. */
function knownText(known: readonly EarlierRow[], unitFor: (row: Row) => Unit): string | undefined {
  const [first] = known;
  const judged = known.flatMap(({ row }) => row.routes[0] ?? []);
  if (first === undefined || judged.length === 0) return undefined;
  const { unit, decimals } = printingOf(first.row, unitFor);
  const ends = [least(judged.map((each) => each.least)), greatest(judged.map((each) => each.greatest))];
  const range = [...new Set(ends.map((end) => formatNumber(end, unit, decimals)))].join(' to ');
  const days = [...new Set(known.map(({ date }) => date))].sort().join(' and ');
  return `last known ${withUnitName(range, unit)} on ${days}`;
}
