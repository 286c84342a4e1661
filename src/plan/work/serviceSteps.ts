import type { Characteristic } from '../../characteristics/characteristic.ts';
import { fittedSize } from '../../checks/grades/madeSize.ts';
import { usualGrades } from '../../checks/grades/usualGrades.ts';
import { limitsAt } from '../../checks/judge/limits.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Bands } from '../../checks/judge/sideLimit.ts';
import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import { limitsInForce } from '../../documents/limits/precedence.ts';
import type { Part } from '../../layout/part.ts';
import { absolute, add, compare, divide, type Fraction, fraction } from '../../quantity/fraction.ts';
import type { ServiceStep } from '../cut/cleanUp.ts';
import type { PlanContext } from './context.ts';

/** A step with the limits of new parts of its size. */
export interface CutStep extends ServiceStep {
  readonly grade: Grade;
  readonly least: Fraction;
  readonly greatest: Fraction;
}

export interface ServiceSteps {
  /** Those that go farther than the part was made to, and not past its last size; the first cut comes first. */
  readonly steps: readonly CutStep[];
  readonly from: 'limits' | 'shop' | 'assumed';
  /** How far the last size is, where limits state one. */
  readonly isCutOff: boolean;
}

/** The sizes to which a part can be ground or bored at a position. */
export function serviceSteps(
  context: PlanContext,
  part: Part,
  size: Characteristic,
  { position, judgement }: Row,
): ServiceSteps {
  const { engine, state } = context;
  const { grades, from } = gradesOf(context, part);
  const now = fittedSize(engine, undefined, size, position).by;
  // What is larger than the size that it is said to be ground to has still to be ground to it.
  const isShort = judgement.past?.side === (part.sized?.made === 'under' ? 'max' : 'min');
  const farther = grades
    .filter(({ by }) => compare(absolute(by), absolute(now)) > (isShort ? -1 : 0))
    .sort((a, b) => compare(absolute(a.by), absolute(b.by)));
  const all = farther.flatMap((grade) => stepOf(grade, bandsOf(grade)) ?? []);
  const steps = all.filter(({ grade, least, greatest }) => isWithinLast({ least, greatest }, bandsOf(grade)));
  return { steps, from, isCutOff: steps.length < all.length };

  function bandsOf(grade: Grade): Bands {
    const limits = limitsOn(engine.limits, state.session.date);
    const inForce = limitsInForce(limits, engine.document.layout, size, position, { grade, by: grade.by });
    return limitsAt(size, inForce, nothing, nothing).bands;
  }
}

/** A formula's inputs are of the part as it is now. */
const nothing = (): undefined => undefined;

/** Those that limits print of the part or of what is bought for it, else the shop's, else the usual ones. */
function gradesOf(
  { engine, registry, state }: PlanContext,
  part: Part,
): { readonly grades: readonly Grade[]; readonly from: ServiceSteps['from'] } {
  const isMade = ({ by }: Grade): boolean => (part.sized?.made === 'under' ? by.n < 0n : by.n > 0n);
  const bought = registry.parts.all.filter(({ sized }) => sized?.fits === part.id);
  const ids = registry.all
    .filter(({ of }) => [part, ...bought].some(({ id }) => id === of))
    .map(({ id }) => id);
  const documents = limitsOn(engine.limits, state.session.date);
  const printed = documents.flatMap(({ limits }) =>
    ids.flatMap((id) => limits.get(id)?.general.sizes.map(({ grade }) => grade) ?? []),
  );
  const distinct = printed.filter(
    (grade, index) => isMade(grade) && printed.findIndex((each) => sameGrade(each, grade)) === index,
  );
  if (distinct.length > 0) return { grades: distinct, from: 'limits' };
  const ofShop = engine.planning.steps.get(part.id);
  if (ofShop !== undefined) return { grades: ofShop.filter(isMade), from: 'shop' };
  const unit = engine.units.get('length');
  const usual = usualGrades({ of: part.id, dimension: 'size' }, registry.parts);
  return {
    grades: usual.filter((grade) => isMade(grade) && (unit === undefined || grade.size?.unit === unit)),
    from: 'assumed',
  };
}

/** Aimed at the middle of the limits of new parts; without both of them there is nothing to aim at. */
function stepOf(grade: Grade, { new: limits }: Bands): CutStep | undefined {
  const [least, greatest] = [limits?.min?.amount, limits?.max?.amount];
  if (least === undefined || greatest === undefined) return undefined;
  return { name: gradeText(grade), aim: divide(add(least, greatest), fraction(2)), grade, least, greatest };
}

const isWithinLast = (step: { least: Fraction; greatest: Fraction }, { last }: Bands): boolean =>
  (last?.min === undefined || compare(step.least, last.min.amount) >= 0) &&
  (last?.max === undefined || compare(step.greatest, last.max.amount) <= 0);
