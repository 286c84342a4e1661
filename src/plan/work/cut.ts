import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Row } from '../../checks/judge/row.ts';
import { isCut } from '../../documents/planning/settings.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { absolute, compare } from '../../quantity/fraction.ts';
import { type PlanContext, rowsOfPart, sizeOfPart } from './context.ts';
import { type CutPlace, cutPlace } from './cutPlace.ts';
import { damageFoundAt } from './damage.ts';
import { isOfRenewedWhole, isRenewedAlone } from './renewal/renewed.ts';
import { isUsedAgain } from './renewal/usedAgain.ts';
import { wholeOf } from './renewal/wholeOf.ts';
import { seenOn } from './seen.ts';
import { type Urgency, urgencyOf } from './urgency.ts';

/** All journals ground or all bores bored: to one step, or each to its own where the shop says so. */
export interface Cut {
  readonly part: Part;
  readonly urgency: Urgency;
  /** What asks for it, the worst first. */
  readonly rows: readonly Row[];
  readonly found: readonly Observation[];
  readonly places: readonly CutPlace[];
  /** Places that are cut to one step, with the one that needs the most. */
  readonly groups: readonly CutGroup[];
  /** Of journals beyond their last step what they are of one piece with: that is renewed, and nothing is cut. */
  readonly renews: Part | undefined;
  /** Where it is to be cut with the others, and nobody knows its size. */
  readonly unmeasured: readonly Position[];
  /** The size to measure and state first, where it was cut already or its readings are doubted, and none of them holds. */
  readonly asksForSize: Characteristic | undefined;
  /** Of these where a reading is in doubt and is taken again. */
  readonly doubted: readonly Position[];
}

/** Where it is cut: a crankshaft at all its journals of a kind, whether they were measured or not. */
export const placesCut = ({ part, groups, unmeasured }: Cut): readonly Position[] => [
  ...groups.flatMap(({ places }) => places.map(({ position }) => position)),
  ...(part.sized?.made === 'under' ? unmeasured : []),
];

export interface CutGroup {
  readonly places: readonly CutPlace[];
  readonly deciding: CutPlace;
}

/** Every part that has to be ground or bored, as far as readings and what was seen say; none of what is renewed as a whole. */
export const cutsOf = (context: PlanContext): readonly Cut[] =>
  context.registry.parts.all
    .filter(isCut)
    .flatMap((part) => cutOf(context, part, (position) => !isOfRenewedWhole(context, part, position)) ?? []);

/** What would be ground or bored of a whole that is to be renewed. */
export const cutsWithin = (context: PlanContext, whole: Part): readonly Cut[] =>
  context.registry.parts
    .within(whole)
    .filter(isCut)
    .flatMap((part) => cutOf(context, part) ?? []);

function cutOf(
  context: PlanContext,
  part: Part,
  isKept: (position: Position) => boolean = () => true,
): Cut | undefined {
  const size = sizeOfPart(context, part);
  const positions = context.engine.document.layout
    .positionsOf(part.family)
    .filter((position) => isKept(position) && !isRenewedAlone(context, part, position));
  const measured = rowsOfPart(context, part).filter(({ position }) => positions.includes(position));
  const rows = measured.filter((row) => ASKING.includes(row.judgement.verdict) && !isUsedAgain(row, context));
  const found = [
    ...new Set(positions.flatMap((position) => damageFoundAt(context, part, position, ['machine']))),
  ];
  if (size === undefined || (rows.length === 0 && found.length === 0)) return undefined;
  const places = measured
    .filter(({ characteristic }) => characteristic === size)
    .flatMap((row) => cutPlace(context, part, row) ?? []);
  // A shaft that came back ground, and nobody wrote its size: it is measured again before anything else.
  const doubted = context.suspects.flatMap(({ row }) => (row.characteristic === size ? [row.position] : []));
  const isDoubted = places.length === 0 && doubted.length > 0;
  if (rows.length === 0 && isDoubted) return undefined;
  const isOpen = isDoubted || (places.length === 0 && wasCut(context, part));
  const isSeparate = context.engine.planning.separate.has(part.id);
  const whole = wholeOf(part, context.registry.parts);
  const asked = places.filter(
    ({ position, choice }) =>
      !(isSeparate || (whole === undefined && hasNoStep(choice))) ||
      rows.some((row) => row.position === position) ||
      damageFoundAt(context, part, position, ['machine']).length > 0,
  );
  // One bore beyond its last step is renewed by itself; the others go to the step that they need.
  const [alone, together] = [asked.filter((each) => isAlone(each)), asked.filter((each) => !isAlone(each))];
  const groups = [...alone.map((place) => [place]), together].flatMap((each) => groupOf(each) ?? []);
  const unmeasured =
    isSeparate && groups.length > 0
      ? []
      : positions.filter((each) => !places.some(({ position }) => position === each));
  return {
    part,
    urgency: found.length > 0 ? 'must' : urgencyOf(rows),
    rows: [...rows].sort((a, b) => ASKING.indexOf(a.judgement.verdict) - ASKING.indexOf(b.judgement.verdict)),
    found: found.map((each) => seenOn(part, each, context.engine)),
    places: asked,
    groups,
    renews: groups.some(({ deciding }) => isBeyond(deciding)) ? whole : undefined,
    unmeasured,
    asksForSize: isOpen ? size : undefined,
    doubted: unmeasured.filter((each) => doubted.includes(each)),
  };

  function isAlone(place: CutPlace): boolean {
    return isSeparate || (whole === undefined && isBeyond(place));
  }
}

const wasCut = ({ state, registry }: PlanContext, part: Part): boolean =>
  state.run.some(({ partChanges }) =>
    partChanges.some(
      ({ how, parts }) =>
        how === 'machined' && parts.some((each) => registry.parts.within(each.part).includes(part)),
    ),
  );

/** What is made in no farther size is renewed where it is worn itself, and cut with no other. */
export const hasNoStep = (choice: CutPlace['choice']): boolean =>
  choice.kind === 'beyond the last step' && choice.last === undefined;

export const isBeyond = ({ choice }: CutPlace): boolean => choice.kind === 'beyond the last step';

const ASKING: readonly Row['judgement']['verdict'][] = ['out', 'worn'];

function groupOf(places: readonly CutPlace[]): CutGroup | undefined {
  const [first, ...rest] = places;
  if (first === undefined) return undefined;
  return { places, deciding: rest.reduce((most, each) => (needsMore(each, most) ? each : most), first) };
}

/** Those that need more than any step, and the last of them most. */
const MORE_THAN_A_STEP: readonly CutPlace['choice']['kind'][] = ['beyond the last step', 'not provable'];

/** A farther step, or the same of which less is left over; before all what nobody can prove. */
function needsMore({ choice: a }: CutPlace, { choice: b }: CutPlace): boolean {
  if (a.kind !== 'step' || b.kind !== 'step')
    return MORE_THAN_A_STEP.indexOf(a.kind) > MORE_THAN_A_STEP.indexOf(b.kind);
  const farther = compare(absolute(a.step.grade.by), absolute(b.step.grade.by));
  return farther > 0 || (farther === 0 && compare(a.spare, b.spare) < 0);
}
