import {
  formatLimit,
  limitNumber,
  type Printing,
  pastText,
  printingOf,
  readingText,
} from '../../checks/findings/readings.ts';
import type { Change } from '../../compare/change.ts';
import type { ConcessionChange } from '../../compare/diff.ts';
import { type LimitChange, statedAmount, warmthOf } from '../../compare/limitChanges.ts';
import type { RewrittenSession } from '../../compare/rewritten.ts';
import type { EngineState, StateValue } from '../../compare/state.ts';
import type { Unlikeness } from '../../compare/unlike.ts';
import { nameAt } from '../../documents/measure.ts';
import { shortName } from '../../layout/naming.ts';
import { isSameTemperature } from '../../measurement/temperature.ts';
import { formatNumber, formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { absolute } from '../../quantity/fraction.ts';
import { plural } from '../../quantity/words.ts';
import { positionText } from '../check/view/rowView.ts';

type UnitFor = EngineState['unitFor'];

/** Both sides with the digits of the finer. */
export function printingOfChange({ a, b }: Change, unitFor: UnitFor): Printing {
  const both = [a, b].flatMap((side) => (side === undefined ? [] : [printingOf(side.row, unitFor)]));
  const [first] = both;
  if (first === undefined) throw new RangeError('a change has at least one side');
  return { ...first, decimals: Math.max(...both.map(({ decimals }) => decimals)) };
}

export function sideText(side: StateValue | undefined, printing: Printing): string {
  const judged = side?.row.routes[0];
  return judged === undefined ? '' : readingText(judged, printing);
}

/** `+0.0011 ±0.00024`, or `+0.0001 within ±0.00024`. */
export function deltaText(
  { state, delta, expanded }: Change,
  { unit, decimals, outcomes }: Printing,
  withUncertainty = true,
): string {
  if (delta === null || outcomes !== undefined) return '';
  if (state === 'same') return 'no change';
  const sign = delta.n < 0n ? '−' : delta.n > 0n ? '+' : '';
  const size = `${sign}${formatNumber(absolute(delta), unit, decimals)}`;
  if (!withUncertainty || expanded === null || expanded === 0) return size;
  return `${size} ${state === 'within' ? 'within ' : ''}±${formatUncertainty(expanded, unit)}`;
}

/** `worn → out, accepted: large by 17 tenths`, or what stayed, with the limit that it comes near. */
export function verdictsText({ a, b, moved }: Change, printing: Printing): string {
  const [before, after] = [a?.row.judgement.verdict, b?.row.judgement.verdict];
  if (a === undefined || b === undefined) {
    const side = a ?? b;
    return side === undefined ? '' : nowText(side, printing);
  }
  const now = nowText(b, printing);
  if (before === null || before === undefined || after === null) return now;
  if (before !== after) return `${before === 'accepted' ? 'out, accepted' : before} → ${now}`;
  if (moved === null || !moved.isNear) return now;
  const limit = `${moved.side} ${limitNumber(moved.limit, printing)}`;
  return `${now}, ${moved.toward ? 'nearer' : 'away from'} ${limit}`;
}

/** Without the uncertainty of the value itself: beside it stands that of the change. */
function nowText({ row }: StateValue, printing: Printing): string {
  const { verdict, marginal } = row.judgement;
  if (verdict === null || verdict === 'undecided') return verdict ?? '';
  const past = pastText(row, printing);
  if (verdict === 'accepted') return `out, accepted: ${past}`;
  return [verdict, past, marginal ? 'near a limit' : ''].filter(Boolean).join(', ');
}

/** What is other in how it was measured. Temperatures are reported once, above everything. */
export const unlikeText = (unlike: readonly Unlikeness[]): string => {
  const reported = unlike.filter((each) => each !== 'temperature');
  return reported.length === 0 ? '' : `other ${reported.join(', ')}`;
};

/** `at other temperatures: 64 degF, then 81 degF`, each pair once. */
export function warmthText(changes: readonly Change[]): string {
  const pairs = changes
    .filter(({ unlike }) => unlike.includes('temperature'))
    .map(({ a, b }) => `${a?.session.temperature?.written}, then ${b?.session.temperature?.written}`);
  const different = [...new Set(pairs)];
  return different.length === 0 ? '' : `at other temperatures: ${different.join('; ')}`;
}

/** `3`, or `3 (out)`: what was out and is not there any more is not passed over. */
export function positionWord({ a, b }: Change): string {
  const row = (b ?? a)?.row;
  if (row === undefined) return '';
  const { verdict } = row.judgement;
  const isNews = verdict === 'out' || verdict === 'accepted' || verdict === 'undecided';
  const where = shortName(row.position);
  return [where, isNews ? `(${verdict})` : ''].filter(Boolean).join(' ');
}

/** `main bearing clearance 5 flywheel end: wear max 0.0050 → 0.0060 in`. */
export function limitChangeText({ row, band, side, a, b }: LimitChange, unitFor: UnitFor): string {
  const { unit, decimals } = printingOf(row, unitFor);
  const text = (limit: LimitChange['a']): string =>
    limit === undefined ? 'none' : formatLimit(statedAmount(limit), unit, decimals);
  const name = `${row.characteristic.label} ${positionText(row)}`.trim();
  const isAlike = a === undefined || b === undefined || isSameTemperature(warmthOf(a), warmthOf(b));
  const warm = isAlike ? '' : `, at ${warmthOf(a).text} → ${warmthOf(b).text}`;
  return `${name}: ${band} ${side} ${withUnitName(`${text(a)} → ${text(b)}`, unit)}${warm}`;
}

/** `cylinder taper 3, up to 0.0030: standby engine`. */
export function concessionText({ concession }: ConcessionChange): string {
  const { measure, positions, upTo, downTo, reason } = concession;
  const values = [upTo && `up to ${upTo.written}`, downTo && `down to ${downTo.written}`].filter(Boolean);
  return `${measure.id.replaceAll('_', ' ')} ${positions.map(({ name }) => name).join(', ')}, ${values.join(' and ')}: ${reason}`;
}

/** What is not the latest value of anything, and is not the same in the record all the same. */
export const REWRITTEN = 'changed in sessions that later ones measured anew';

/** `2-trial: crankshaft end play 0.0107 → 0.0088`, a text each reading; of a session that one side lacks only how many. */
export function rewrittenTexts({ session, state, readings }: RewrittenSession): readonly string[] {
  if (state !== 'edited') {
    const what = state === 'new' ? 'a new session, with' : 'the session is gone, with';
    return [`${session.name}: ${what} readings at ${plural(readings.length, 'position')}`];
  }
  const side = (written: readonly string[]): string => (written.length === 0 ? 'none' : written.join(', '));
  return readings.map(
    ({ measure, position, a, b }) => `${session.name}: ${nameAt(measure, position)}  ${side(a)} → ${side(b)}`,
  );
}
