import { gradeText, sameGrade } from '../../documents/grades/grade.ts';
import { FITS, SIZED_PARTS, type SizedPart } from '../../documents/grades/sizedParts.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';
import { type GradeInForce, gradeInForce } from './gradeInForce.ts';

const UNLIKE: FindingKind = {
  code: 'part/grade',
  severity: 'warning',
  means: 'A piston or a ring is said to be of another size than the cylinder that it is in.',
  matters:
    'A piston a size too small knocks and a ring a size too small has a gap that blows; the next size does not go in.',
  usually:
    'Look at the stamp on the part and at the size that was bored, then put right what is written or what is fitted.',
  example: 'piston 2 is of 0.020 over, and its cylinder of 0.030 over',
};

export const unlikeFitKinds: readonly FindingKind[] = [UNLIKE];

/** Said by the session that states one of the two. Shells are left out: of those a half may differ by choice. */
export const unlikeFitFindings = (view: SessionView): readonly Finding[] =>
  FITS.flatMap((fit) => {
    const [bored, ...others] = fit.flatMap((id) => SIZED_PARTS.filter((part) => part.id === id));
    if (bored === undefined) return [];
    return others.filter(({ isShell }) => isShell !== true).flatMap((part) => unlike(part, bored, view));
  });

function unlike(part: SizedPart, bored: SizedPart, view: SessionView): readonly Finding[] {
  const { engine, session } = view;
  const statement = session.sizes.find((each) => each.part === part || each.part === bored);
  if (statement === undefined) return [];
  const { layout } = engine.document;
  return layout.positionsOf(part.family).flatMap((position) => {
    const at = relateOne(layout, position, bored.family);
    const [own, its] = [gradeOf(part, position, view), at && gradeOf(bored, at, view)];
    if (own?.from !== 'stated' || its?.from !== 'stated') return [];
    if (sameGrade(own.grade.upper, its.grade.upper)) return [];
    const [is, bore] = [own, its].map(({ grade }) => gradeText(grade.upper, engine.units.get('length')));
    const message = `${part.label} ${position.name} is of ${is}, and its ${bored.label} of ${bore}`;
    return [finding(UNLIKE, statement.place, message, { position })];
  });
}

const gradeOf = (part: SizedPart, position: Position, { engine, session }: SessionView): GradeInForce =>
  gradeInForce(engine, session, part.id, position);
