import { type Grade, gradeText } from '../../documents/grades/grade.ts';
import { tableName } from '../../layout/naming.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { compare } from '../../quantity/fraction.ts';
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
  const message = `${figures.join('; ')}: of another size, and no document states it; write \`${block}\` where it was made here, or \`fitted:\` where the part came in that size`;
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

/**
 * Where an old size is still stated, parts that measure another farther on were ground or bored since: one finding for all
 * of a part, with the block to write.
 */
export function oneForOldSizes(
  findings: readonly Finding[],
  rows: readonly Row[],
  view: SessionView,
): readonly Finding[] {
  const { layout } = view.engine.document;
  const groups = new Map<string, Machined & { readonly rows: readonly Row[] }>();
  for (const row of findings.flatMap((each) => rowOf(each, rows) ?? [])) {
    const part = view.registry.parts.find(row.characteristic.of ?? '');
    const grade = fittingGrade(row, view);
    if (part === undefined || grade === undefined || !isMadeFarther(part, grade, row)) continue;
    const key = `${part.id} ${statedText(row, view)} ${gradeText(grade)}`;
    const known = groups.get(key) ?? { part, grade, at: [], rows: [] };
    groups.set(key, { ...known, at: [...known.at, row.position], rows: [...known.rows, row] });
  }
  // One of several is not ground alone to another size.
  const made = [...groups.values()].filter(
    ({ part, at }) => at.length > 1 || layout.positionsOf(part.family).length === 1,
  );
  const told = new Set(made.flatMap((each) => each.rows));
  return [
    ...made.map((each) => oldSize(each, each.rows, view)),
    ...findings.filter((each) => {
      const row = rowOf(each, rows);
      return row === undefined || !told.has(row);
    }),
  ];
}

const rowOf = ({ measure, at }: Finding, rows: readonly Row[]): Row | undefined =>
  rows.find(
    (row) => row.characteristic.id === measure && row.position === at && row.size.isKnown && !row.half,
  );

/** Smaller than its stated size where it is ground, larger where it is bored; what is bought to fit it is not machined here. */
const isMadeFarther = ({ sized }: Part, grade: Grade, { size }: Row): boolean =>
  sized?.made !== undefined &&
  sized.fits === undefined &&
  compare(grade.by, size.by) === (sized.made === 'under' ? -1 : 1);

const statedText = ({ size }: Row, { engine }: SessionView): string => {
  const unit = engine.units.get('length');
  return unit === undefined ? '' : size.text(unit);
};

function oldSize(machined: Machined, rows: readonly Row[], view: SessionView): Finding {
  const { part, grade, at } = machined;
  const [first] = rows;
  if (first === undefined) throw new Error('a size that no row has');
  const isAll = at.length === view.engine.document.layout.positionsOf(part.family).length;
  const where = isAll ? part.plural : `${part.plural} ${at.map(tableName).join(', ')}`;
  const work = part.sized?.made === 'under' ? 'ground' : 'bored';
  const stated =
    first.size.assumedFrom === undefined
      ? `the stated size is ${statedText(first, view)}`
      : `its ${first.size.assumedFrom.label} is stated as ${statedText(first, view)}`;
  const message = `${where}: of size ${gradeText(grade)} by their readings, and ${stated}; if they were ${work}, write \`machined: [${itemText(machined, view)}]\` in this session; else correct what is stated, or check how the gauge was set`;
  return finding(ANOTHER_GRADE, first.place, message, {
    measure: first.characteristic.id,
    covers: rows.map(({ characteristic, position }) => ({ measure: characteristic.id, at: position })),
  });
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
