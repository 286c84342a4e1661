import type { Engine } from '../../documents/assemble.ts';
import { STANDARD, sameGrade } from '../../documents/grades/grade.ts';
import { type PartGrade, wholly } from '../../documents/grades/movement.ts';
import { FITS, SIZED_PARTS, type SizedPart } from '../../documents/grades/sizedParts.ts';
import type { SizeStatement } from '../../documents/grades/statements.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { relate } from '../../layout/relate.ts';
import { sessionsBefore } from '../history/earlier.ts';

/** The grade of a part that is in the engine at a session. */
export interface GradeInForce {
  readonly grade: PartGrade;
  /** Said of the part itself; or of a part that it fits, and assumed of this one; or of neither. */
  readonly from: 'stated' | SizedPart | undefined;
}

const NOTHING_STATED: GradeInForce = { grade: wholly(STANDARD), from: undefined };

/** A session that was taken; undefined for the engine as it stands after all of them. */
export type Moment = SessionDocument | undefined;

/** The grade of a part at a position when a session was taken: by its own words and those of all before it. */
export function gradeInForce(engine: Engine, moment: Moment, id: string, position: Position): GradeInForce {
  const sayings = sayingsUpTo(engine, moment);
  const part = SIZED_PARTS.find((each) => each.id === id);
  if (sayings.length === 0 || part === undefined) return NOTHING_STATED;
  return new Told(sayings, engine.document.layout).at(part, position);
}

/** Most engines are of standard size: then nothing has to be looked for. */
export const isAnySizeStated = (engine: Engine, moment: Moment): boolean =>
  sayingsUpTo(engine, moment).length > 0;

/** All that is said up to a session, in the order of time; the engine document speaks of how it came. */
function sayingsUpTo(engine: Engine, moment: Moment): readonly Saying[] {
  const known = remembered.get(moment ?? engine);
  if (known !== undefined) return known;
  const all = [
    engine.document.fitted,
    ...(moment === undefined ? engine.sessions : [...sessionsBefore(engine, moment), moment]).map(
      ({ sizes }) => sizes,
    ),
  ];
  const sayings = all.flatMap((stated, when) => stated.map((statement) => ({ statement, when })));
  remembered.set(moment ?? engine, sayings);
  return sayings;
}

interface Saying {
  readonly statement: SizeStatement;
  readonly when: number;
}

const remembered = new WeakMap<SessionDocument | Engine, readonly Saying[]>();

/** What is stated of one part at one position, and when it was said last. */
interface Own {
  readonly grade: Partial<PartGrade>;
  readonly when: number;
}

class Told {
  readonly #sayings: readonly Saying[];
  readonly #layout: Layout;

  constructor(sayings: readonly Saying[], layout: Layout) {
    this.#sayings = sayings;
    this.#layout = layout;
  }

  at(part: SizedPart, position: Position): GradeInForce {
    const own = this.#own(part, position);
    const mates = matesOf(part).flatMap((mate) => this.#ofMate(mate, position) ?? []);
    const [leader] = mates.filter(({ mate }) => leads(mate, part));
    // A journal that was ground again takes no shells of the old size.
    const isOvertaken =
      own !== undefined && leader !== undefined && this.#isChangedSince(leader.mate, position, own.when);
    const stated = own === undefined || isOvertaken ? {} : own.grade;
    const [mate] = mates;
    const base = mate === undefined ? wholly(STANDARD) : wholly(mate.grade.upper);
    const from = Object.keys(stated).length > 0 ? ('stated' as const) : mate?.mate;
    return { grade: { ...base, ...stated }, from };
  }

  /** Of a mate in one place or several: what they agree on. */
  #ofMate(mate: SizedPart, position: Position) {
    const grades = (relate(this.#layout, position, mate.family) ?? []).map(
      (at) => this.#own(mate, at)?.grade,
    );
    const [first] = grades;
    if (first?.upper === undefined || first.lower === undefined) return undefined;
    const { upper, lower } = first;
    const agree =
      sameGrade(upper, lower) && grades.every((each) => each?.upper && sameGrade(each.upper, upper));
    return agree ? { mate, grade: wholly(upper) } : undefined;
  }

  #isChangedSince(leader: SizedPart, position: Position, when: number): boolean {
    const before = new Told(
      this.#sayings.filter((each) => each.when <= when),
      this.#layout,
    );
    return (relate(this.#layout, position, leader.family) ?? []).some((at) => {
      const [then, now] = [before.#own(leader, at), this.#own(leader, at)];
      return (
        now !== undefined &&
        now.when > when &&
        !sameGrade(then?.grade.upper ?? STANDARD, now.grade.upper ?? STANDARD)
      );
    });
  }

  #own(part: SizedPart, position: Position): Own | undefined {
    let own: Own | undefined;
    let identity: string | undefined;
    for (const { statement, when } of this.#sayings) {
      if (statement.part !== part || !this.#isAt(statement, position)) continue;
      const isAnother =
        statement.identity !== undefined && identity !== undefined && statement.identity !== identity;
      const kept = statement.isWhole || isAnother ? {} : own?.grade;
      own = { grade: { ...kept, ...statement.grade }, when };
      identity = statement.identity ?? identity;
    }
    return own;
  }

  #isAt({ at, part }: SizeStatement, position: Position): boolean {
    return at.length === 0 || at.some((key) => findPosition(this.#layout, part.family, key) === position);
  }
}

const matesOf = ({ id }: SizedPart): readonly SizedPart[] =>
  (FITS.find((fit) => fit.includes(id)) ?? []).flatMap((each) =>
    each === id ? [] : SIZED_PARTS.filter((part) => part.id === each),
  );

/** The part that is machined leads those that are bought for it. */
const leads = (a: SizedPart, b: SizedPart): boolean => {
  const fit = FITS.find((each) => each.includes(a.id)) ?? [];
  return fit[0] === a.id && fit.includes(b.id);
};
