import type { Engine } from '../../documents/assemble.ts';
import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import type { SizeStatement } from '../../documents/grades/statements.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { absolute, compare, divide, fraction } from '../../quantity/fraction.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';
import { usualGrades } from './usualGrades.ts';

const UNUSUAL: FindingKind = {
  code: 'part/unusual-size',
  severity: 'warning',
  means:
    'A size is stated that lies farther from standard than parts are made as a rule, and neither the limits nor shop.yaml print it.',
  matters: 'A nought that was left out moves every limit of the part by ten times as much.',
  usually:
    'Write the size that is stamped on the part. Where it is so large, print it: a row of `sizes:` in the limits, or `plan: { steps: … }` in shop.yaml.',
  example: 'main journals: 0.10 under is more than the usual 0.060; is 0.010 under meant?',
};

const TWO_SIZES: FindingKind = {
  code: 'part/two-sizes',
  severity: 'warning',
  means:
    'One session says under `machined:` to which size a part was made, and under `fitted:` that it has another.',
  matters: 'Limits, shells and pistons go by one of them, and that may be the wrong one.',
  usually: 'Look at the stamp, and put right what is wrong. The same size need not be said twice.',
  example:
    'main journals: machined to 0.010 under, and fitted as 0.020 under; 0.020 under is used: correct the one that is wrong',
};

export const statedSizeKinds: readonly FindingKind[] = [UNUSUAL, TWO_SIZES];

export const statedSizeFindings = (view: SessionView): readonly Finding[] => [
  ...unusualSizes(view),
  ...twoSizes(view.session, view.engine),
];

/** What the engine document says is told with the latest session. */
function unusualSizes({ engine, session }: SessionView): readonly Finding[] {
  const own = session === engine.sessions.at(-1) ? engine.document.fitted : [];
  return [...own, ...session.sizes].flatMap((each) => unusual(each, engine, session));
}

function unusual(
  { at: { part }, grade: { upper: size }, place }: SizeStatement,
  engine: Engine,
  session: SessionDocument,
): readonly Finding[] {
  if (size === undefined || part.sized?.made === undefined || isPrinted(size, engine, session)) return [];
  const usual = usualGrades({ of: part.id, dimension: 'size' }, engine.parts);
  const unit = size.size?.unit;
  const most = usual.filter((each) => each.size?.unit === unit).at(-1);
  const greatest = usual.at(-1);
  const isFarther = (than: Grade | undefined): boolean =>
    than !== undefined && compare(absolute(size.by), absolute(than.by)) > 0;
  if (!isFarther(most ?? greatest)) return [];
  const tenth = { by: divide(size.by, fraction(10)), of: undefined, size: undefined };
  const meant = usual.find((each) => sameGrade(each, tenth));
  const question = meant === undefined ? '' : `; is ${gradeText(meant)} meant?`;
  const [digits = ''] = gradeText(most ?? greatest ?? size).split(' ');
  const message = `${part.plural}: ${gradeText(size)} is more than the usual ${digits}${question}`;
  return [finding(UNUSUAL, place, message)];
}

function isPrinted(size: Grade, { limits, planning }: Engine, { date }: SessionDocument): boolean {
  const ofLimits = limitsOn(limits, date).flatMap((each) =>
    [...each.limits.values()].flatMap(({ general }) => general.sizes.map(({ grade }) => grade)),
  );
  return [...ofLimits, ...[...planning.steps.values()].flat()].some((each) => sameGrade(each, size));
}

/** Of what a session says of one part at one place twice. */
function twoSizes({ partChanges }: SessionDocument, engine: Engine): readonly Finding[] {
  const of = (how: 'machined' | 'fitted'): readonly SizeStatement[] =>
    partChanges.filter((each) => each.how === how).flatMap(({ sizes }) => sizes);
  const unit = engine.units.get('length');
  return of('fitted').flatMap((fitted) => {
    const is = fitted.grade.upper;
    const made = of('machined').find((each) => isOfSamePlace(each, fitted) && each.grade.upper !== undefined);
    if (is === undefined || made?.grade.upper === undefined || sameGrade(is, made.grade.upper)) return [];
    const [was, now] = [made.grade.upper, is].map((each) => gradeText(each, unit));
    const message = `${fitted.at.part.plural}: machined to ${was}, and fitted as ${now}; ${now} is used: correct the one that is wrong`;
    return [finding(TWO_SIZES, fitted.place, message)];
  });
}

const isOfSamePlace = ({ at: a }: SizeStatement, { at: b }: SizeStatement): boolean =>
  a.part === b.part &&
  (a.positions.length === 0 ||
    b.positions.length === 0 ||
    a.positions.some((each) => b.positions.includes(each)));
