import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { LimitEntry, PlacedEntry } from '../../documents/limits/limitEntry.ts';
import type { Position } from '../../layout/position.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';
import { oncePer } from '../once.ts';
import { stepsOf } from './steps.ts';

const NO_STEP: FindingKind = {
  code: 'limits/no-step',
  severity: 'warning',
  means: 'The limits name a step of turning torque, and no session of the engine has a step of that name.',
  matters:
    'Sessions name their steps freely. A limit whose step is written in another way is never used, and no other finding says so.',
  usually:
    'Write the step in the limits as in the sessions. If the step was not measured yet, leave it as it is.',
  example:
    'turning torque: the limits name the step Crank shaft, and no session has it: did you mean crankshaft?',
};

export const stepLimitKinds: readonly FindingKind[] = [NO_STEP];

/** Reported in the latest session that has any step: until the first is taken there is nothing to compare names with. */
export const stepLimitFindings = (view: SessionView): readonly Finding[] =>
  takenAtSteps(view.registry).flatMap((characteristic) => unmatched(characteristic, view));

const takenAtSteps = oncePer(({ all }: Registry) => all.filter(({ family }) => family.isNamedBySession));

function unmatched(characteristic: Characteristic, { engine, session }: SessionView): readonly Finding[] {
  const { id, label } = characteristic;
  const measuring = engine.sessions.filter((each) => stepsOf(each, id).length > 0);
  if (measuring.at(-1) !== session) return [];
  const steps = new Set(measuring.flatMap((each) => stepsOf(each, id)).map(({ name }) => name));
  return ownEntries(engine, id).flatMap(({ path, entry }) => {
    const key = path.map((each) => each.key).join(' ');
    if (steps.has(key)) return [];
    const message = `${label}: the limits name the step ${key}, and no session has it${meant(key, steps)}`;
    const limitPlace = placeOf(entry);
    return [finding(NO_STEP, session.start, message, { measure: id, ...atStep(engine, key), limitPlace })];
  });
}

const atStep = ({ document: { layout } }: Engine, key: string): { readonly position?: Position } => {
  const position = layout.step(key);
  return position === undefined ? {} : { position };
};

/** Limits that serve several engines may name steps that this one has not. */
const ownEntries = ({ limits }: Engine, id: string): readonly PlacedEntry[] =>
  limits.filter(({ isOwn }) => isOwn).flatMap((each) => each.limits.get(id)?.at ?? []);

const placeOf = ({ bands }: LimitEntry): Finding['limitPlace'] =>
  Object.values(bands).flatMap((band) => band?.max?.place ?? band?.min?.place ?? [])[0];

/** Names that differ in capitals and spaces alone are one name to a reader. */
function meant(key: string, steps: ReadonlySet<string>): string {
  const alike = [...steps].find((step) => folded(step) === folded(key));
  const help = alike === undefined ? didYouMean(key, steps) : `did you mean ${alike}?`;
  return help === undefined ? '' : `: ${help}`;
}

const folded = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '');
