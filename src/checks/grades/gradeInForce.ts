import type { Engine } from '../../documents/assemble.ts';
import { type Grade, STANDARD } from '../../documents/grades/grade.ts';
import { type PartGrade, wholly } from '../../documents/grades/movement.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { sessionsBefore } from '../history/earlier.ts';
import { matesOf, type SurfaceSide } from './mates.ts';
import { agreedOf, isOvertaken, type Saying, saidOf } from './said.ts';

/** The grade of a part that is in the engine at a session. */
export interface GradeInForce {
  readonly grade: PartGrade;
  /** What says each of it: the part itself, a part that it goes with and of which it is assumed, or nothing. */
  readonly from: Readonly<Record<keyof PartGrade, Source>>;
}

export type Source = 'stated' | Part | undefined;

const NOTHING_STATED: GradeInForce = {
  grade: wholly(STANDARD),
  from: { upper: undefined, lower: undefined, outside: undefined },
};

/** A session that was taken; undefined for the engine as it stands after all of them. */
export type Moment = SessionDocument | undefined;

/** The grade of a part at a position when a session was taken: by its own words and those of all before it. */
export function gradeInForce(engine: Engine, moment: Moment, part: Part, position: Position): GradeInForce {
  const sayings = sayingsUpTo(engine, moment);
  if (sayings.length === 0) return NOTHING_STATED;
  const known = reported.get(sayings) ?? new Map<Part, Map<Position, GradeInForce>>();
  reported.set(sayings, known);
  const ofPart = known.get(part) ?? new Map<Position, GradeInForce>();
  known.set(part, ofPart);
  const found = ofPart.get(position) ?? workedOut(engine, sayings, part, position);
  ofPart.set(position, found);
  return found;
}

/** The same is asked for every reading, its limits and its nominal size. */
const reported = new WeakMap<readonly Saying[], Map<Part, Map<Position, GradeInForce>>>();

function workedOut(engine: Engine, sayings: readonly Saying[], part: Part, position: Position): GradeInForce {
  const [inside, outside] = (['inside', 'outside'] as const).map((side) =>
    sideInForce(engine, sayings, part, position, side),
  );
  const [upper, lower] = [settled(inside, 'upper'), settled(inside, 'lower')];
  const out = settled(outside, 'outside');
  return {
    grade: { upper: upper.grade, lower: lower.grade, outside: out.grade },
    from: { upper: upper.from, lower: lower.from, outside: out.from },
  };
}

interface SideInForce {
  readonly own: Partial<PartGrade>;
  readonly mate: { readonly part: Part; readonly grade: Grade } | undefined;
}

/** What is said of the part itself, unless a journal was ground again since: that takes no shells of the old size. */
function sideInForce(
  { document: { layout }, parts }: Engine,
  sayings: readonly Saying[],
  part: Part,
  position: Position,
  side: SurfaceSide,
): SideInForce {
  const mates = matesOf(part, parts).filter((mate) => mate.side === side);
  const said = saidOf(sayings, part, position);
  const isOld =
    said !== undefined && mates.some((mate) => isOvertaken(said, mate, position, sayings, layout));
  const [mate] = mates.flatMap((each) => {
    const grade = agreedOf(each, position, sayings, layout);
    return grade === undefined ? [] : [{ part: each.part, grade }];
  });
  return { own: said === undefined || isOld ? {} : said.grade, mate };
}

function settled(
  side: SideInForce | undefined,
  key: keyof PartGrade,
): { readonly grade: Grade; readonly from: Source } {
  const own = side?.own[key];
  if (own !== undefined) return { grade: own, from: 'stated' };
  return { grade: side?.mate?.grade ?? STANDARD, from: side?.mate?.part };
}

/** Most engines are of standard size: then nothing has to be looked for. */
export const isAnySizeStated = (engine: Engine, moment: Moment): boolean =>
  sayingsUpTo(engine, moment).length > 0;

/** All that is said up to a session, in the order of time; the engine document speaks of how it came. */
function sayingsUpTo(engine: Engine, moment: Moment): readonly Saying[] {
  const known = remembered.get(moment ?? engine);
  if (known !== undefined) return known;
  const sessions = moment === undefined ? engine.sessions : [...sessionsBefore(engine, moment), moment];
  const all = [engine.document.fitted, ...sessions.map(({ sizes }) => sizes)];
  const sayings = all.flatMap((stated, when) => stated.map((statement) => ({ statement, when })));
  // That a part was replaced says nothing where no size was ever spoken of.
  const isSaid = sayings.some(({ statement: { grade } }) => Object.keys(grade).length > 0);
  const kept = isSaid ? sayings : [];
  remembered.set(moment ?? engine, kept);
  return kept;
}

const remembered = new WeakMap<SessionDocument | Engine, readonly Saying[]>();
