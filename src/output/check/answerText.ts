import type { FollowUpState } from '../../checks/findings/followUps.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import { shortName } from '../../layout/naming.ts';

/** What is told by name where an engine stands, the worst first; the rest is counted. */
const NAMED: readonly Verdict[] = ['out', 'undecided', 'missing'];
const COUNTED: readonly Verdict[] = ['accepted', 'worn', 'off target', 'ok'];

/** `2 out: rod bearing clearance 2, 3; 1 undecided: …; 3 accepted; 61 ok; 1 open`: where an engine stands, in one line. */
export function answerText(rows: readonly Row[], followUps: readonly FollowUpState[]): string {
  const of = (verdict: Verdict): readonly Row[] =>
    rows.filter(({ judgement }) => judgement.verdict === verdict);
  const parts = [
    ...NAMED.flatMap((verdict) => counted(of(verdict), verdict, `: ${namesText(of(verdict))}`)),
    ...COUNTED.flatMap((verdict) => counted(of(verdict), verdict, '')),
  ];
  const open = followUps.filter(({ state }) => state === 'open').length;
  const unlimited = rows.filter(({ judgement }) => judgement.verdict === null).length;
  if (unlimited > 0) parts.push(`${unlimited} without limits`);
  if (open > 0) parts.push(`${open} open`);
  return parts.join('; ') || 'nothing measured';
}

const counted = (rows: readonly Row[], verdict: Verdict, names: string): readonly string[] =>
  rows.length === 0 ? [] : [`${rows.length} ${verdict}${names}`];

/** `rod bearing clearance 2, 3, cylinder taper 3`. */
function namesText(rows: readonly Row[]): string {
  const byLabel = new Map<string, string[]>();
  for (const row of rows) {
    const { label } = row.characteristic;
    const name = [shortName(row.position), row.half ?? ''].join(' ').trim();
    byLabel.set(label, [...(byLabel.get(label) ?? []), name]);
  }
  return [...byLabel].map(([label, names]) => `${label} ${names.join(', ')}`.trim()).join(', ');
}
