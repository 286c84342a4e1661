import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import type { Stock } from '../../documents/stock/stock.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Part } from '../../layout/part.ts';
import { relate } from '../../layout/relate.ts';
import { onShelf } from '../fit/shelf.ts';
import { pistonsOfSize, type ShelfPistons } from '../fit/shelfPistons.ts';
import { isLineOf } from '../handover/agreedLine.ts';
import { sendings } from '../handover/sendings.ts';
import type { PlanContext } from '../work/context.ts';
import type { CutGroup } from '../work/cut.ts';
import type { Job } from '../work/job.ts';
import { cutAt } from './bought.ts';
import { goodsOf, type NeededLine } from './orderLine.ts';
import { measureText, unreadFor } from './toMeasure.ts';

/** What is bought for a part that is ground or bored, of the size that it is cut to. */
export function cutLines(context: PlanContext, job: Job, pistons: ShelfPistons): readonly NeededLine[] {
  const { engine, registry, state } = context;
  const { cut, name } = job;
  if (cut === undefined) return [];
  const mates = registry.parts.all.filter(({ sized }) => sized?.fits === cut.part.id);
  const sent = sendings(engine).find(
    ({ work, returned }) => returned === undefined && work.some((each) => isLineOf(each, [job], engine)),
  );
  const { layout } = engine.document;
  return bySize(cut.groups).flatMap((group) => {
    const { choice, position } = group.deciding;
    const at = cutAt(cut.part, group, { engine });
    return choice.kind === 'beyond the last step'
      ? []
      : mates.map((mate): NeededLine => {
          const isShell = mate.sized?.liesIn !== undefined;
          const bought = [...new Set(at.flatMap((each) => relate(layout, each, mate.family) ?? []))];
          const neededBy = isShell ? sent?.due : sent?.date;
          const count = isRings(mate) ? at.length : bought.length;
          return {
            ...goodsOf(mate),
            ...(choice.kind === 'step'
              ? ofSize(engine, mate, choice.step.grade, count, pistons)
              : OF_NO_SIZE_YET),
            count,
            // Bores are finished to pistons in hand; shells are chosen when the journals are ground and measured.
            when: isShell || choice.kind !== 'step' ? 'after measuring' : 'now',
            for: name,
            waitsFor:
              choice.kind === 'not provable'
                ? `measure how deep ${namedAt(cut.part.label, position)} is damaged`
                : isShell
                  ? measureText(unreadFor(context, mate, bought, 'once ground'))
                  : undefined,
            neededBy,
            isLate: neededBy !== undefined && neededBy < state.session.date,
          };
        });
  });
}

/** Bores that are cut each by itself may come to one step all the same. */
const bySize = (groups: readonly CutGroup[]): readonly CutGroup[] =>
  groups.flatMap((group, index) => {
    const same = groups.filter((each) => isOfOneSize(each, group));
    if (same.length === 0) return [group];
    return groups.indexOf(same[0] ?? group) === index
      ? [{ ...group, places: same.flatMap(({ places }) => places) }]
      : [];
  });

const isOfOneSize = ({ deciding: { choice: a } }: CutGroup, { deciding: { choice: b } }: CutGroup): boolean =>
  a.kind === 'step' && b.kind === 'step' && sameGrade(a.step.grade, b.step.grade);

type SizeToBuy = Pick<NeededLine, 'size' | 'code' | 'onShelf' | 'free'>;

/** No step is proven where nobody measured how deep the damage goes. */
const OF_NO_SIZE_YET: SizeToBuy = { size: 'depth unknown', code: undefined, onShelf: 0 };

/** What is bought of a size: how it is called, and how many of the count lie on the shelf. */
export const ofSize = (
  engine: PlanContext['engine'],
  mate: Part,
  grade: Grade,
  count: number,
  pistons: ShelfPistons,
): SizeToBuy => {
  const free = shelved(engine, mate, grade, pistons);
  return {
    size: gradeText(grade, engine.units.get('length')),
    code: codeOf(engine.stock, mate, grade),
    onShelf: Math.min(count, free),
    free,
  };
};

/** What is made in sizes and lies on the shelf by them. */
export const isKeptBySize = (part: Part): boolean =>
  part.sized?.liesIn !== undefined || part.id === 'piston' || isRings(part);

export const isRings = ({ sized }: Part): boolean => sized?.inSets === true;

function codeOf({ shells, rings }: Stock, mate: Part, grade: Grade): string | undefined {
  const found =
    mate.sized?.liesIn !== undefined
      ? shells.filter(({ part }) => part === mate)
      : isRings(mate)
        ? rings
        : [];
  const codes = [...new Set(found.filter(({ size }) => sameGrade(size, grade)).map(({ code }) => code))];
  return codes.length > 1 ? 'by plan --fit' : codes[0];
}

function shelved(engine: PlanContext['engine'], mate: Part, grade: Grade, pistons: ShelfPistons): number {
  const { stock } = engine;
  const isOf = ({ size }: { readonly size: Grade }): boolean => sameGrade(size, grade);
  const free = (items: readonly { readonly free: number }[]): number =>
    items.reduce((sum, each) => sum + each.free, 0);
  if (mate.sized?.liesIn !== undefined)
    return Math.floor(
      free(
        onShelf(
          stock.shells.filter((each) => each.part === mate && isOf(each)),
          engine,
        ),
      ) / 2,
    );
  // What has run went with a bore that is cut away.
  if (mate.id === 'piston')
    return pistonsOfSize(pistons, grade).filter(({ ranIn }) => ranIn === undefined).length;
  return isRings(mate) ? free(onShelf(stock.rings.filter(isOf), engine)) : 0;
}
