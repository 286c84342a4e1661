import { type Amount, withUnit } from '../../documents/amount.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type Grade, gradeText } from '../../documents/grades/grade.ts';
import { plainName } from '../../documents/planning/namedWork.ts';
import { isCut } from '../../documents/planning/settings.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import { formatNumber } from '../../quantity/format.ts';
import {
  absolute,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  subtract,
} from '../../quantity/fraction.ts';
import { type Finding, finding } from '../finding.ts';
import { usualGrades } from '../grades/usualGrades.ts';
import { IMPLAUSIBLE } from '../slips/implausible.ts';

/**
 * Depths of damage that are still to be cut out and go deeper than a whole step, or to the last of them: a tenth of that is
 * usual (common practice, no source), and the plan takes twice as much off the diameter. One that was stated again is believed.
 */
export const deepFindings = (open: readonly Observation[], engine: Engine): readonly Finding[] =>
  open.flatMap((each) => depthAsked(each, engine) ?? []);

/** What is asked about the depth of one that is still to be cut out. */
export const depthAsked = (each: Observation, engine: Engine): Finding | undefined =>
  each.depth === undefined || each.remedy === 'renew' || isStatedAgain(each, engine)
    ? undefined
    : asked(each, each.depth, engine);

function asked({ on, is, parts, place }: Observation, depth: Amount, engine: Engine): Finding | undefined {
  const cut = engine.parts.all.find((part) => parts.some((at) => isSurfaceOf(part, at.part, engine)));
  const steps = cut === undefined ? [] : stepsOf(cut, depth, engine);
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const taken = multiply(depth.amount, fraction(2));
  const isDeep = isAsMuch(depth.amount, first) || compare(taken, absolute(last.by)) > 0;
  if (!isDeep) return undefined;
  const [off, tenth] = [taken, divide(depth.amount, fraction(10))].map((each) => textOf(each, depth));
  const message = `${on.join(', ')}: ${is}, ${withUnit(depth)} deep: cleaning it up takes ${off} off the diameter, and the first step is ${gradeText(first)}; is ${tenth} meant? If it is that deep, measure it again and state it in a second \`found:\``;
  return finding(IMPLAUSIBLE, place, message);
}

/** What is scored of a main is its journal, and of a crankshaft any; of a head no hole for a guide. */
export const isSurfaceOf = (cut: Part, seen: Part, { parts }: Pick<Engine, 'parts'>): boolean =>
  isCut(cut) &&
  parts.within(seen).includes(cut) &&
  (cut.family === seen.family || cut.sized?.made === 'under');

const isAsMuch = (depth: Fraction, { by }: Grade): boolean => compare(depth, absolute(by)) >= 0;

/** What this shop can get, else what is usual, the smallest first. */
function stepsOf(part: Part, { unit }: Amount, { planning, parts }: Engine): readonly Grade[] {
  const usual = usualGrades({ of: part.id, dimension: 'size' }, parts);
  const isOfSystem = ({ size }: Grade): boolean => (size?.unit.name === 'in') === (unit.name === 'in');
  return [...(planning.steps.get(part.id) ?? usual.filter(isOfSystem))]
    .filter(({ by }) => by.n !== 0n)
    .sort((a, b) => compare(absolute(a.by), absolute(b.by)));
}

/** Another entry says of the same thing that it goes as deep, within a fifth. */
const isStatedAgain = (each: Observation, { sessions }: Engine): boolean =>
  sessions.some(({ observations }) =>
    observations.some(
      (other) => other.place !== each.place && isOfSame(other, each) && isAlike(other.depth, each.depth),
    ),
  );

const isOfSame = ({ on: a }: Observation, { on: b }: Observation): boolean =>
  b.every((name) => a.some((other) => plainName(other) === plainName(name)));

const isAlike = (a: Amount | undefined, b: Amount | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  compare(multiply(absolute(subtract(a.amount, b.amount)), fraction(5)), b.amount) <= 0;

const MOST_DECIMALS = 6;

const textOf = (amount: Fraction, { unit }: Amount): string =>
  `${formatNumber(amount, unit, MOST_DECIMALS).replace(/\.?0+$/, '')} ${unit.name}`;
