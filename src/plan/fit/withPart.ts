import { reportEngine } from '../../checks/judge/report.ts';
import { STANDARD } from '../../documents/grades/grade.ts';
import { wholly } from '../../documents/grades/movement.ts';
import type { SizeStatement } from '../../documents/grades/statements.ts';
import type { OfferedPart } from '../../documents/parts/offeredPart.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type PlanContext, planContext } from '../work/context.ts';

/**
 * The engine as if a part of the shelf were fitted in it now: what the part replaces counts no more, what was read of it
 * on the shelf counts as if read here, against this engine's limits at the size that the part was made to.
 */
export function withPart({ engine, registry, state }: PlanContext, part: OfferedPart): PlanContext {
  // A teardown would begin another run, in which nothing is measured yet.
  const asNow = (session: SessionDocument): SessionDocument =>
    session.stage === 'teardown' ? { ...session, stage: 'machined' } : session;
  const blank = { ...asNow(state.session), ...NOTHING_IN_IT };
  const sizes = sizesOf(part, registry.parts.within(part.part));
  const fitting = {
    ...blank,
    path: `${blank.path}#${part.place.path}`,
    partChanges: [tried(part, sizes)],
    sizes,
  };
  const after = { ...blank, path: `${fitting.path}#after` };
  const sessions = [...engine.sessions, fitting, ...part.inspections.map(asNow), after];
  const fitted = { ...engine, sessions };
  const made = reportEngine(fitted, registry, {}).state;
  if (made === undefined) throw new Error('an engine with sessions has a state');
  return planContext(fitted, registry, made);
}

/** Standard, unless it is said otherwise. */
const sizesOf = (
  { mark, place, sizes }: OfferedPart,
  within: readonly OfferedPart['part'][],
): readonly SizeStatement[] => [
  ...within
    .filter(({ sized }) => sized !== undefined)
    .map((part) => ({
      at: { part, positions: [] },
      grade: wholly(STANDARD),
      isWhole: true,
      identity: mark,
      place,
    })),
  ...sizes,
];

const tried = (
  { part, mark, place }: OfferedPart,
  sizes: readonly SizeStatement[],
): SessionDocument['partChanges'][number] => ({
  how: 'tried',
  name: part.label,
  parts: [{ part, positions: [] }],
  identity: new Map([['mark', mark]]),
  condition: undefined,
  conditionAt: [],
  sizes,
  mark,
  marksAt: [],
  codesAt: [],
  place,
});

const NOTHING_IN_IT = {
  hours: undefined,
  hoursFrom: undefined,
  blocks: [],
  work: [],
  uses: [],
  partChanges: [],
  observations: [],
  concessions: [],
  accepted: [],
  handedOver: { agreed: [], sent: [], confirmed: [] },
  study: undefined,
  checked: [],
  sizes: [],
  tightened: [],
  imported: [],
} as const;
