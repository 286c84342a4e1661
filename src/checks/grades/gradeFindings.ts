import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import { movement, wholly } from '../../documents/grades/movement.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import { gradesPrinted, limitsInForce } from '../../documents/limits/precedence.ts';
import { compare, type Fraction, ZERO } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { named, printingOf, readingText } from '../findings/readings.ts';
import { limitsAt } from '../judge/limits.ts';
import type { JudgedRoute, Row, SessionView } from '../judge/row.ts';
import type { SidedLimits } from '../judge/sideLimit.ts';
import { passedLimits } from '../judge/verdict.ts';
import { usualGrades } from './usualGrades.ts';

export const ANOTHER_GRADE: FindingKind = {
  code: 'reading/grade',
  severity: 'warning',
  means:
    'The value is out by the limits of the stated service size, and inside the limits of another size. Either another size is in the engine than the documents say, or nobody wrote down that the part was machined. Or a head or deck is lower than it was read before, and nobody wrote down that it was cut.',
  matters:
    'Shells, pistons and rings are bought by the size that is written down, and what was read before the cut, such as the recession of the valves, is taken for true.',
  usually:
    'Look at the stamp on the part, then state its size: `machined: [{ part: main journals, size: 0.010 under }]` where it was made here, `fitted:` for what is in the engine.',
  example: 'main journal diameter 3: 2.9665 in fits 0.020 under, not the stated 0.010 under',
};

export const gradeKinds: readonly FindingKind[] = [ANOTHER_GRADE];

/** Sizes that are out and fit another grade, which is reported by name. */
export const gradeFindings = (
  view: SessionView,
  rows: readonly Row[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] => rows.flatMap((row) => otherGrade(row, view, unitFor) ?? []);

function otherGrade(row: Row, view: SessionView, unitFor: (row: Row) => Unit): Finding | undefined {
  const { routes, judgement, characteristic, position } = row;
  const [judged] = routes;
  if (judged === undefined || judgement.verdict !== 'out') return undefined;
  const fitting = fittingGrade(row, view);
  if (fitting === undefined) return undefined;
  const printing = printingOf(row, unitFor);
  const { unit } = printing;
  const message = `${named(row)}: ${readingText(judged, printing)} ${unit.name} fits ${gradeText(fitting, unit)}, ${notStated(row, unit)}`;
  return finding(ANOTHER_GRADE, row.place, message, { measure: characteristic.id, position });
}

/** The size whose limits a value would be inside of. */
export const fittingGrade = (row: Row, view: SessionView): Grade | undefined =>
  gradesOf(row, view).find((grade) => fits(row, grade, view));

function notStated({ size }: Row, unit: Unit): string {
  if (!size.isKnown) return 'and no size is stated';
  return size.assumedFrom === undefined
    ? `not the stated ${size.text(unit)}`
    : `not the ${size.text(unit)} of its ${size.assumedFrom.label}`;
}

/**
 * Those that its maker prints, and those in which such parts are usually made, in the unit in which the fitted one is
 * stated: 0.75 mm is nearly 0.030 in. Not the fitted one.
 */
function gradesOf({ characteristic, position, size }: Row, view: SessionView): readonly Grade[] {
  const { engine, session, registry } = view;
  if (characteristic.dimension === undefined) return [];
  const printed = limitsOn(engine.limits, session.date).flatMap((document) =>
    gradesPrinted(document, engine.document.layout, characteristic, position),
  );
  const unit = size.grade?.size?.unit ?? engine.units.get('length');
  const usual = usualGrades(characteristic, registry.parts).filter(
    (grade) => unit === undefined || grade.size === undefined || grade.size.unit === unit,
  );
  const all = [...printed, ...usual];
  return all.filter(
    (grade, index) =>
      (size.grade === undefined || !sameGrade(grade, size.grade)) &&
      all.findIndex((each) => sameGrade(each, grade)) === index,
  );
}

/** Inside all limits of the other grade, and nearer to its limits of new parts than to those of its own. */
function fits(row: Row, grade: Grade, { engine, session }: SessionView): boolean {
  const { characteristic, position, limits } = row;
  const [judged] = row.routes;
  if (characteristic.dimension === undefined || judged === undefined) return false;
  const by = movement(characteristic.dimension, wholly(grade));
  const { bands } = limitsAt(
    characteristic,
    limitsInForce(limitsOn(engine.limits, session.date), engine.document.layout, characteristic, position, {
      grade,
      by,
    }),
    () => undefined,
    () => undefined,
  );
  const [own, other] = [limits.bands, bands];
  const last = { min: other.wear?.min ?? other.new?.min, max: other.wear?.max ?? other.new?.max };
  if (other.new === undefined || own.new === undefined || passedLimits(judged, last).length > 0) return false;
  return compare(beyond(judged, other.new), beyond(judged, own.new)) < 0;
}

/** How far a value lies beyond limits; nought inside them. */
const beyond = (judged: JudgedRoute, limits: SidedLimits): Fraction =>
  passedLimits(judged, limits)[0]?.by ?? ZERO;
