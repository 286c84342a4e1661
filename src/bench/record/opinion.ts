import type { Registry } from '../../characteristics/registry.ts';
import type { Finding, Severity } from '../../checks/finding.ts';
import { judgeSession } from '../../checks/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import { openDocument } from '../../documents/opened.ts';
import { readSession } from '../../documents/session.ts';
import type { Plan } from '../plan.ts';
import type { PlannedPoint } from '../points.ts';
import { type SessionHead, sessionText } from '../sessionText.ts';
import { belongsTo, layoutAround, narrowedTo } from './narrow.ts';
import type { Taken } from './state.ts';
import { writtenBlocks } from './writtenBlocks.ts';

/** What is to be said of a reading as soon as it is typed. */
export interface Opinion {
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
 * Judges a reading by the session that would be written if nothing but its own position had been measured: the same
 * loader and the same checks as `check`, so that the two never disagree.
 */
export function opinionsOf(
  point: PlannedPoint,
  taken: ReadonlyMap<string, Taken>,
  { engine, registry, head, plan }: Judging,
): readonly Opinion[] {
  const family = registry.find(point.measure)?.family ?? 'engine';
  const layout = layoutAround(engine.document.layout, family, point.position);
  const familyOf = (id: string) => registry.find(id)?.family ?? 'engine';
  const here = new Map(
    [...taken].filter(([, each]) => belongsTo(layout, familyOf(each.point.measure), each.point)),
  );
  const text = sessionText(head, [], writtenBlocks(plan.blocks, here, registry));
  const narrowed = narrowedTo(engine, layout);
  const opened = openDocument('entry.yaml', 'entry.yaml', Buffer.from(text));
  if (opened.root === undefined) return opened.problems.map(asOpinion);
  const problems = [...opened.problems];
  const context = { source: opened.source, units: engine.units, problems };
  const session = readSession(opened.root, { measures: registry, layout, grids: engine.grids }, context);
  if (problems.length > 0) return problems.map(asOpinion);
  const { findings } = judgeSession(narrowed, registry, session);
  return worthSaying(findings.filter((each) => concerns(each, point, registry)).map(opinion));
}

/** That it is near a limit need not be said of what is beyond one. */
function worthSaying(opinions: readonly Opinion[]): readonly Opinion[] {
  const others = opinions.filter(({ word }) => word !== 'marginal');
  return others.length > 0 ? others : opinions;
}

const asOpinion = ({ message }: { readonly message: string }): Opinion => ({
  severity: 'error',
  word: 'unusable',
  message,
});

/** What can only be said of a session that is complete, or is said once at its end. */
const LATER = new Set(['reading/missing', 'session/unmeasured', 'instrument/assumed', 'instrument/unknown']);

/** The reading's own characteristic, or one that is worked out from it. */
function concerns(finding: Finding, { measure, position }: PlannedPoint, registry: Registry): boolean {
  if (LATER.has(finding.code) || finding.measure === undefined) return false;
  if (finding.measure === measure) return finding.position === undefined || finding.position === position;
  const other = registry.find(finding.measure);
  return other?.derivations.some(({ inputs }) => inputs.includes(measure)) === true;
}

const opinion = ({ severity, code, message }: Finding): Opinion => ({
  severity,
  word: (code.split('/')[1] ?? code).replace('-', ' '),
  message,
});
