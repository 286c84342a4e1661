import type { Registry } from '../../characteristics/registry.ts';
import type { Finding, Severity } from '../../checks/finding.ts';
import { judgeSession } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import { openDocument } from '../../documents/opened.ts';
import { readSession } from '../../documents/session/session.ts';
import type { Plan } from '../plan.ts';
import { keyOf, type PlannedPoint } from '../points.ts';
import { sessionContext } from '../sessionContext.ts';
import { type SessionHead, sessionText } from '../sessionText.ts';
import { belongsTo, layoutAround, narrowedTo } from './narrow.ts';
import type { Taken } from './state.ts';
import { writtenBlocks } from './writtenBlocks.ts';

/** What is to be said of a reading as soon as it is typed. */
export interface LiveFeedback {
  readonly severity: Severity;
  /** One word, such as `out`. */
  readonly word: string;
  readonly message: string;
}

export interface Judging {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly head: SessionHead;
  readonly plan: Plan;
}

/**
 * Judges a reading by the session that would be written if nothing but its own position and its like had been measured:
 * the same loader and the same checks as `check`, so that the two never disagree. Of what is worked out from it only what
 * it has brought about is said.
 */
export function liveFeedback(
  point: PlannedPoint,
  taken: ReadonlyMap<string, Taken>,
  judging: Judging,
): readonly LiveFeedback[] {
  const now = judged(point, taken, judging);
  if (now.length === 0) return [];
  const without = new Map([...taken].filter(([key]) => key !== keyOf(point)));
  const before = judged(point, without, judging);
  const own = wordsOfOwn(judgedAlone(point, taken, judging));
  const known = new Set(before.map((each) => each.message));
  const reported = wordsOfOwn(before);
  // What another point of the position brought about was said of that one, and is not this one's fault.
  const isNews = (each: Judged): boolean =>
    each.isOwn ? own.has(each.word) || !reported.has(each.word) : !known.has(each.message);
  return worthSaying(now.filter(isNews));
}

const wordsOfOwn = (all: readonly Judged[]): ReadonlySet<string> =>
  new Set(all.filter((each) => each.isOwn).map((each) => each.word));

const judgedAlone = (
  point: PlannedPoint,
  taken: ReadonlyMap<string, Taken>,
  judging: Judging,
): readonly Judged[] => {
  const beside = (each: PlannedPoint): boolean =>
    each.measure === point.measure &&
    each.position.key === point.position.key &&
    keyOf(each) !== keyOf(point);
  return judged(point, new Map([...taken].filter(([, each]) => !beside(each.point))), judging);
};

interface Judged extends LiveFeedback {
  /** About the reading itself, not about what is worked out from it. */
  readonly isOwn: boolean;
}

function judged(
  point: PlannedPoint,
  taken: ReadonlyMap<string, Taken>,
  { engine, registry, head, plan }: Judging,
): readonly Judged[] {
  const around = layoutAround(engine.document.layout, [point.position]);
  const like = [
    ...new Set(
      [...taken.values()].flatMap((each) =>
        each.point.measure === point.measure ? [each.point.position] : [],
      ),
    ),
  ].slice(-MOST_LIKE);
  const layout = layoutAround(engine.document.layout, [point.position, ...like]);
  const isHere = ({ measure, position }: PlannedPoint): boolean =>
    belongsTo(measure === point.measure ? layout : around, position);
  const here = new Map([...taken].filter(([, each]) => isHere(each.point)));
  const text = sessionText(head, [], writtenBlocks(plan.blocks, here, registry));
  const { root, source, problems: known } = openDocument('entry.yaml', 'entry.yaml', Buffer.from(text));
  const problems = [...known];
  if (root === undefined) return problems.map(asFeedback);
  const context = { source, units: engine.units, problems };
  const session = readSession(root, sessionContext(engine, registry, layout), context);
  if (problems.length > 0) return problems.map(asFeedback);
  const { findings } = judgeSession(narrowedTo(engine, layout), registry, session);
  return findings
    .filter((each) => concerns(each, point, registry))
    .map((each) => ({ ...opinion(each), isOwn: each.measure === point.measure }));
}

/** As many others are enough to tell one that stands apart, and a long entry stays as quick as a short one. */
const MOST_LIKE = 8;

const asFeedback = ({ message }: { readonly message: string }): Judged => ({
  isOwn: true,
  severity: 'error',
  word: 'unusable',
  message,
});

/** What is said at once. The rest speaks of a session that is complete, or of an instrument as often as it is read. */
const AT_ONCE: ReadonlySet<string> = new Set([
  'reading/out',
  'reading/undecided',
  'reading/implausible',
  'reading/impossible',
  'reading/spread',
  'reading/worn',
  'reading/off-target',
  'reading/marginal',
  'method/disagree',
  'turning/jump',
  'instrument/range',
  'instrument/digits',
]);

/** The reading's own characteristic, or one that is worked out from it. */
function concerns(finding: Finding, { measure, position }: PlannedPoint, registry: Registry): boolean {
  if (!AT_ONCE.has(finding.code) || finding.measure === undefined) return false;
  if (finding.measure === measure) return finding.at === undefined || finding.at.key === position.key;
  const other = registry.find(finding.measure);
  return other?.derivations.some(({ inputs }) => inputs.includes(measure)) === true;
}

/** As it is asked at the bench. */
const SLIP = 'slip?';
const IMPOSSIBLE = 'impossible';

const opinion = ({ severity, code, message }: Finding): LiveFeedback => ({
  severity,
  word: code === 'reading/implausible' ? SLIP : (code.split('/')[1] ?? code).replace('-', ' '),
  message,
});

/** Of a slip nothing else is worth saying, and that it is near a limit need not be said of what is beyond one. */
function worthSaying(feedback: readonly LiveFeedback[]): readonly LiveFeedback[] {
  const slips = feedback.filter(({ word }) => word === SLIP || word === IMPOSSIBLE);
  if (slips.length > 0) return slips;
  const others = feedback.filter(({ word }) => word !== 'marginal');
  return others.length > 0 ? others : feedback;
}
