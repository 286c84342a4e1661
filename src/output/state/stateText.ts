import { type EngineReport, type StateReport, unitsFor } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Unit } from '../../quantity/units.ts';
import { plural } from '../../quantity/words.ts';
import { characteristicTables } from '../check/checkTables.ts';
import { findingsLines } from '../check/findingLines.ts';
import { quietLines, quietMeasures, troubledMeasures } from '../check/quietRows.ts';
import type { Line } from '../escape/line.ts';
import { shellWord } from '../terminal/shellWord.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { answerText } from './answerText.ts';

/** The answer first, then what has something to say, then the rest, a line a characteristic. */
export function stateLines(state: StateReport, report: EngineReport, style: TextStyle): readonly Line[] {
  const { rows, findings, run } = state;
  const unitFor = unitsFor(report.engine);
  const quiet = style.detail ? new Set<string>() : quietMeasures(rows, findings);
  const folded = quietLines(measuredBy(rows, quiet), unitFor, style);
  const loud = rows.filter(({ characteristic }) => !quiet.has(characteristic.id));
  return [
    ...wrap(answerText(state, report.followUps), style.width).map(style.paint.strong),
    ...wrap(standingText(run), style.width).map(style.paint.faint),
    ...characteristicTables({ ...state, rows: loud }, unitFor, style),
    ...(folded.length > 0 ? ['', ...folded] : []),
    ...lastKnownLines(state, unitFor, style),
  ];
}

/** What was measured before and is to be measured anew: a line for each characteristic that has no value now. */
function lastKnownLines(
  { rows, lastKnown }: StateReport,
  unitFor: (row: Row) => Unit,
  style: TextStyle,
): readonly Line[] {
  const shown = new Set(rows.map(({ characteristic }) => characteristic.id));
  const gone = lastKnown.filter(({ row }) => !shown.has(row.characteristic.id));
  const dateOf = new Map(gone.map(({ row, date }) => [row, date]));
  const when = (group: readonly Row[]): string =>
    `last known ${[...new Set(group.flatMap((row) => dateOf.get(row) ?? []))].sort().join(' and ')}`;
  const lines = quietLines(
    gone.map(({ row }) => row),
    unitFor,
    style,
    when,
  );
  return lines.length === 0 ? [] : ['', ...lines.map(style.paint.faint)];
}

/** Tables of what is wrong, and what is said of it; what is left out is counted, with the words that show it. */
export function briefStateLines(
  state: StateReport,
  { engine }: EngineReport,
  style: TextStyle,
): readonly Line[] {
  const findings = state.findings.filter(({ severity }) => severity !== 'remark');
  if (findings.length === 0) return [];
  const troubled = troubledMeasures(state.rows, findings);
  const rows = measuredBy(state.rows, troubled);
  const others = new Set(state.rows.map(({ characteristic }) => characteristic.id)).size - troubled.size;
  const more = `${plural(others, 'characteristic')} more: tenths check ${shellWord(engine.folder)}`;
  return [
    ...characteristicTables({ ...state, rows }, unitsFor(engine), style),
    '',
    ...findingsLines(findings, style),
    ...(others > 0 ? wrap(more, style.width).map(style.paint.faint) : []),
  ];
}

const measuredBy = (rows: readonly Row[], ids: ReadonlySet<string>): readonly Row[] =>
  rows.filter(({ characteristic }) => ids.has(characteristic.id));

/** `as rebuild 2026-03-14 leaves it, with what holds of trial 2026-03-07`. */
function standingText(run: StateReport['run']): string {
  const names = run.map(({ stage, date }) => `${stage} ${date}`);
  const earlier = names.slice(0, -1).reverse();
  const held = earlier.length === 0 ? '' : `, with what holds of ${earlier.join(' and ')}`;
  return `as ${names.at(-1)} leaves it${held}`;
}
