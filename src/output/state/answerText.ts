import type { Finding } from '../../checks/finding.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import type { FollowUpState } from '../../checks/open/followUps.ts';
import { tighteningKinds } from '../../checks/tightening/tightening.ts';
import { shortName } from '../../layout/naming.ts';
import { MOST_NAMES, namesOrSome, plural } from '../../quantity/words.ts';
import { severitiesText } from '../check/view/findingsView.ts';

/** What is reported by name where an engine stands, the worst first; the rest is counted. */
const NAMED: readonly Verdict[] = ['out', 'undecided', 'missing'];
const COUNTED: readonly Verdict[] = ['accepted', 'worn', 'off target', 'left out', 'ok'];

/** What these findings say is said already. */
const COUNTED_ALREADY: readonly string[] = [
  'reading/out',
  'reading/undecided',
  'reading/missing',
  'session/unmeasured',
  'found/open',
];
const TIGHTENING: ReadonlySet<string> = new Set(tighteningKinds.map(({ code }) => code));

/** Of a session, or of the state of an engine. */
type Standing = Pick<StateReport, 'rows' | 'findings' | 'session'> &
  Partial<Pick<StateReport, 'untightened'>>;

/** `2 out: rod bearing clearance 2, 3; 1 undecided: …; 3 accepted; 61 ok; 1 promised, to be measured`: where an engine stands, in one line. */
export function answerText(standing: Standing, followUps: readonly FollowUpState[]): string {
  const { rows, findings } = standing;
  const of = (verdict: Verdict): readonly Row[] =>
    rows.filter(({ judgement }) => judgement.verdict === verdict);
  const others = findings.filter(({ code }) => !COUNTED_ALREADY.includes(code));
  const isTightening = ({ code }: Finding): boolean => TIGHTENING.has(code);
  const tightening = severitiesText(others.filter(isTightening));
  const unmeasured = findings.filter(
    ({ code, severity }) => code === 'session/unmeasured' && severity !== 'remark',
  );
  const [found, promised] = [foundIn(findings), promisedIn(followUps)];
  const unlimited = rows.filter(({ judgement }) => judgement.verdict === null).length;
  const parts = [
    ...NAMED.flatMap((verdict) => counted(of(verdict), verdict, `: ${namesText(of(verdict))}`)),
    jointsText(standing),
    tightening && `tightening: ${tightening}`,
    severitiesText(others.filter((each) => !isTightening(each))),
    unmeasured.length > 0 && `${unmeasured.length} not measured`,
    found > 0 && `${found} found, not dealt with`,
    promised > 0 && `${promised} promised, to be measured`,
    ...COUNTED.flatMap((verdict) => counted(of(verdict), verdict, '')),
    unlimited > 0 && `${unlimited} without limits`,
  ];
  return parts.filter(Boolean).join('; ') || 'nothing measured';
}

/** Before a rebuild joints are open in any case. */
const jointsText = ({ session, untightened = [] }: Standing): string =>
  session.stage !== 'rebuild' || untightened.length === 0
    ? ''
    : `${plural(untightened.length, 'joint')} not tightened`;

/** The larger, the worse: the first figure that differs decides between two engines. */
export function weightOf(
  { rows, findings }: Pick<Standing, 'rows' | 'findings'>,
  followUps: readonly FollowUpState[],
): readonly number[] {
  const reported = (severity: Finding['severity']): number =>
    findings.filter((each) => each.severity === severity).length;
  const isOf = (verdicts: readonly Verdict[]): number =>
    rows.filter(({ judgement: { verdict } }) => verdict !== null && verdicts.includes(verdict)).length;
  return [
    reported('error'),
    isOf(['undecided', 'missing']),
    reported('warning'),
    foundIn(findings) + promisedIn(followUps),
    isOf(['accepted', 'worn', 'off target']),
  ];
}

const foundIn = (findings: readonly Finding[]): number =>
  findings.filter(({ code }) => code === 'found/open').length;

const promisedIn = (followUps: readonly FollowUpState[]): number =>
  followUps.filter(({ state }) => state === 'open').length;

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
  const texts = [...byLabel].map(([label, names]) =>
    names.length > MOST_NAMES
      ? `${label} at ${names.length} positions`
      : `${label} ${names.join(' ')}`.trim(),
  );
  return namesOrSome(texts, 'characteristics');
}
