import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';
import { gradeInForce } from './gradeInForce.ts';

const UNLIKE: FindingKind = {
  code: 'part/grade',
  severity: 'warning',
  means: 'The stated size of a piston or a ring is not the size of its cylinder.',
  matters:
    'A piston that is one size too small knocks, and such a ring leaks at its gap; one that is too large does not go in.',
  usually:
    'Look at the stamp on the part and at the size that was bored. Then correct the document, or fit the right part.',
  example: 'piston 2 is stated as 0.020 over, and its cylinder as 0.030 over',
};

export const unlikeFitKinds: readonly FindingKind[] = [UNLIKE];

/** Said by the session that states one of the two. Shells are left out: of those a half may differ by choice. */
export const unlikeFitFindings = (view: SessionView): readonly Finding[] =>
  view.session.sizes.length === 0
    ? []
    : view.engine.parts.all.flatMap((part) => {
        const { fits, liesIn } = part.sized ?? {};
        const bored = fits === undefined || liesIn !== undefined ? undefined : view.engine.parts.find(fits);
        return bored === undefined ? [] : unlike(part, bored, view);
      });

function unlike(part: Part, bored: Part, view: SessionView): readonly Finding[] {
  const { engine, session } = view;
  const statement = session.sizes.find(({ at }) => at.part === part || at.part === bored);
  if (statement === undefined) return [];
  const { layout } = engine.document;
  return layout.positionsOf(part.family).flatMap((position) => {
    const at = relateOne(layout, position, bored.family);
    const [own, its] = [stated(part, position, view), at && stated(bored, at, view)];
    if (own === undefined || its === undefined || sameGrade(own, its)) return [];
    const [is, bore] = [own, its].map((grade) => gradeText(grade, engine.units.get('length')));
    const message = `${namedAt(part.label, position)} is stated as ${is}, and its ${bored.label} as ${bore}`;
    return [finding(UNLIKE, statement.place, message, { position })];
  });
}

/** The size that is said of a part itself. */
function stated(part: Part, position: Position, { engine, session }: SessionView): Grade | undefined {
  const { grade, from } = gradeInForce(engine, session, part, position);
  return from.upper === 'stated' ? grade.upper : undefined;
}
