import { didYouMean } from '../../diagnostic/suggestion.ts';
import { plainName } from '../../documents/planning/namedWork.ts';
import type { AcceptedWarning } from '../../documents/session/acceptedWarnings.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Finding, finding } from '../finding.ts';
import { UNUSED } from '../findings/concessions.ts';

/** How something was measured or tightened, and what stands apart from its like: neither can be undone. Other warnings are put right or measured. */
const ACCEPTABLE: readonly string[] = [
  'torque/wrench',
  'torque/lubricant',
  'torque/order',
  'torque/unconfirmed',
  'torque/contradiction',
  'torque/reuse-unstated',
  'instrument/overdue',
  'instrument/coarse',
  'instrument/range',
  'instrument/digits',
  'instrument/off',
  'instrument/unknown',
  'reading/spread',
  'turning/jump',
  'method/disagree',
  'part/grade',
  'part/unusual-size',
];

/** A warning that somebody may accept: an error never is, and what another line settles is settled by that. */
export const isAcceptable = ({ code, severity, isAccepted }: Finding): boolean =>
  ACCEPTABLE.includes(code) && (severity === 'warning' || isAccepted === true);

/** Warnings that a session of the run accepts are remarks from there on, with who accepted them and why. */
export const withAccepted = (
  findings: readonly Finding[],
  run: readonly SessionDocument[],
): readonly Finding[] =>
  run.every(({ accepted }) => accepted.length === 0)
    ? findings
    : findings.map((each) => {
        if (each.isAccepted === true) return each;
        const session = run.findLast(({ accepted }) => accepted.some((one) => isOf(one, each)));
        const one = session?.accepted.find((entry) => isOf(entry, each));
        if (session === undefined || one === undefined) return each;
        const message = `${each.message}; accepted by ${one.by} (${session.stage} ${session.date}): ${one.reason}`;
        return { ...each, severity: 'remark', message, isAccepted: true };
      });

/** Those that accept nothing that any session of the run was warned of. */
export const unusedAcceptances = (
  findings: readonly Finding[],
  run: readonly SessionDocument[],
): readonly Finding[] =>
  run.flatMap(({ accepted }) =>
    accepted
      .filter((one) => !findings.some((each) => isOf(one, each)))
      .map((one) => finding(UNUSED, one.place, `${nameOf(one)} is accepted in vain: ${why(one, findings)}`)),
  );

const nameOf = ({ warning, of }: AcceptedWarning): string => `${warning} of ${of}`;

function why({ warning, of }: AcceptedWarning, findings: readonly Finding[]): string {
  if (!ACCEPTABLE.includes(warning)) {
    const help = didYouMean(warning, ACCEPTABLE);
    return help ?? 'a warning with this code cannot be accepted; tenths explain says what to do about it';
  }
  const others = findings.filter((each) => each.code === warning && isAcceptable(each));
  const begins = [...new Set(others.map(({ message }) => message.split(/: | is | was | of /)[0] ?? ''))];
  if (begins.length === 0) return 'there is no such warning';
  return didYouMean(of, begins) ?? `that warning is about ${begins.join(', ')}`;
}

/** By its first words, and never one position for all of them. */
function isOf({ warning, of }: AcceptedWarning, each: Finding): boolean {
  if (each.code !== warning || !isAcceptable(each)) return false;
  const [said, text] = [plainName(of), plainName(each.message)];
  if (said === '' || !text.startsWith(said)) return false;
  const rest = text.slice(said.length);
  const isWhole = /^(?:$|[^\p{L}\p{N}])/u.test(rest);
  const isOfOthers = each.at !== undefined && rest.startsWith(` ${plainName(each.at.name)}`);
  return isWhole && !isOfOthers;
}
