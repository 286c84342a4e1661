import { type Grade, gradeText } from '../../documents/grades/grade.ts';
import { tableName } from '../../layout/naming.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { type Finding, finding } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { ANOTHER_GRADE, fittingGrade } from './gradeFindings.ts';

/**
 * Where nobody says that parts were machined, all that fits another size has one cause, a block that was not written: it is one
 * finding, with the block in it.
 */
export function oneForUnstatedSizes(
  findings: readonly Finding[],
  rows: readonly Row[],
  view: SessionView,
): readonly Finding[] {
  const of = ({ measure, at }: Finding): Row | undefined =>
    rows.find((row) => row.characteristic.id === measure && row.position === at && !row.size.isKnown);
  const unstated = findings.flatMap((each) => of(each) ?? []);
  const [first] = unstated;
  if (first === undefined || unstated.length < 2) return findings;
  const parts = machinedParts(unstated, view);
  const figures = byLabel(unstated).map(([label, at]) => `${label} ${at.map(tableName).join(', ')}`);
  const block = `machined: [${parts.map((each) => itemText(each, view)).join(', ')}]`;
  const message = `${figures.join('; ')}: of another size, and none is stated; write \`${block}\` where it was made here, or \`fitted:\` where it came so`;
  const covers = unstated.map(({ characteristic, position }) => ({
    measure: characteristic.id,
    at: position,
  }));
  const about = { measure: first.characteristic.id, covers };
  return [
    finding(ANOTHER_GRADE, first.place, message, about),
    ...findings.filter((each) => of(each) === undefined),
  ];
}

interface Machined {
  readonly part: Part;
  readonly grade: Grade;
  readonly at: readonly Position[];
}

/** Each part with the size that it has, and where. */
function machinedParts(rows: readonly Row[], view: SessionView): readonly Machined[] {
  const found: Machined[] = [];
  for (const row of rows) {
    const part = view.registry.parts.find(row.characteristic.of ?? '');
    const grade = fittingGrade(row, view);
    if (part === undefined || grade === undefined) continue;
    const index = found.findIndex((each) => each.part === part && gradeText(each.grade) === gradeText(grade));
    const known = found[index];
    if (known === undefined) found.push({ part, grade, at: [row.position] });
    else found[index] = { ...known, at: [...new Set([...known.at, row.position])] };
  }
  return found;
}

function itemText({ part, grade, at }: Machined, { engine }: SessionView): string {
  const isAll = at.length === engine.document.layout.positionsOf(part.family).length;
  const where = isAll ? '' : `, at: [${at.map(({ name }) => name).join(', ')}]`;
  return `{ part: ${part.plural}${where}, size: ${gradeText(grade, engine.units.get('length'))} }`;
}

function byLabel(rows: readonly Row[]): readonly (readonly [string, readonly Position[]])[] {
  const labels = [...new Set(rows.map(({ characteristic }) => characteristic.label))];
  return labels.map((label) => [
    label,
    rows.filter(({ characteristic }) => characteristic.label === label).map(({ position }) => position),
  ]);
}
