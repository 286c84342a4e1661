import { type Finding, finding } from '../../checks/finding.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import { OTHER_WORK } from '../../checks/open/ofPlan.ts';
import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import type { SizeStatement } from '../../documents/grades/statements.ts';
import { coverOf, placesMeant, workedOn } from '../../documents/planning/namedWork.ts';
import type { Position } from '../../layout/position.ts';
import { placesText } from '../work/placesText.ts';
import type { Agreements } from './agreement.ts';

interface AgreedSize {
  readonly grade: Grade;
  readonly date: string | undefined;
}

/** Parts that came back of another size than any that the customer agreed to: each line that says how they were made is told once. */
export const madeOtherwise = (agreements: Agreements, { run }: StateReport): readonly Finding[] =>
  run.flatMap(({ date, partChanges }) =>
    partChanges
      .filter(({ how }) => how === 'machined')
      .flatMap(({ sizes }) => sizes.flatMap((size) => otherwise(size, date, agreements) ?? [])),
  );

function otherwise(
  { at, grade: { upper: made }, place }: SizeStatement,
  date: string,
  agreements: Agreements,
): Finding | undefined {
  const { engine } = agreements;
  const { layout } = engine.document;
  if (made === undefined) return undefined;
  const places = placesMeant(at.part, at.positions, { layout });
  const other = places.flatMap((position) => {
    const agreed = agreedAt(at.part, position, agreements);
    const before = agreed.findLast((each) => each.date === undefined || each.date <= date);
    return before === undefined || agreed.some(({ grade }) => sameGrade(grade, made))
      ? []
      : [{ position, before }];
  });
  const [first] = other;
  if (first === undefined) return undefined;
  const unit = engine.units.get('length');
  const where = placesText(
    other.map(({ position }) => position),
    layout,
  );
  const { grade, date: day } = first.before;
  const on = day === undefined ? '' : ` on ${day}`;
  const message = `${at.part.plural} ${where}: agreed to ${gradeText(grade, unit)}${on}, and ${gradeText(made, unit)} was made: tell the customer, and write down the new yes`;
  return finding(OTHER_WORK, place, message);
}

/** The sizes that were agreed to for a part at a place, the earliest first. */
const agreedAt = (
  part: SizeStatement['at']['part'],
  position: Position,
  { all, engine: { parts } }: Agreements,
): readonly AgreedSize[] =>
  all.flatMap(({ agreement: { date, items } }) =>
    items.flatMap((item) =>
      item.grade !== undefined && coverOf(workedOn(item, parts), part, [position], parts) === 'all'
        ? [{ grade: item.grade, date }]
        : [],
    ),
  );
