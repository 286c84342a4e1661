import { gradeInForce } from '../../checks/grades/gradeInForce.ts';
import { type Grade, gradeText } from '../../documents/grades/grade.ts';
import { classText } from '../../documents/limits/choices.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import type { Fits } from '../fit/fits.ts';
import type { PistonProblem } from '../fit/pistonChoice.ts';
import type { ShelfPistons } from '../fit/shelfPistons.ts';
import type { FittedPlace } from '../fit/shellFit.ts';
import { wantedAt } from '../fit/wanted.ts';
import type { PlanContext } from '../work/context.ts';
import type { Awaited } from './awaited.ts';
import { isRings, ofSize } from './cutLines.ts';
import { goodsOf, type NeededLine } from './orderLine.ts';
import { measureText, unreadFor } from './toMeasure.ts';

export interface Shelf {
  readonly fits: Fits;
  readonly pistons: ShelfPistons;
}

/** What is bought for a part that is back from the machine shop: what the shelf has was chosen by its size. */
export function awaitedLines(context: PlanContext, awaited: Awaited, shelf: Shelf): readonly NeededLine[] {
  const { machined, mate, positions, places } = awaited;
  const { engine } = context;
  const name = `${machined.sized?.made === 'over' ? 'bored' : 'ground'} ${machined.plural}`;
  if (mate.sized?.liesIn !== undefined) return shellLines(context, mate, places, name, shelf);
  const { layout } = engine.document;
  return bySize(positions, machined, context).map(([grade, at]) => {
    const wanted = new Set(at.flatMap((position) => relate(layout, position, mate.family) ?? []));
    const count = isRings(mate) ? at.length : places.filter((place) => wanted.has(place)).length;
    return {
      ...goodsOf(mate),
      ...ofSize(engine, mate, grade, count, shelf.pistons),
      count,
      when: 'now' as const,
      for: name,
    };
  });
}

/**
 * Shells of some bearings: those that were chosen from the shelf by their codes; of the others, by the size of the journal, those
 * whose sizes are known, for the shelf has none that does, and those that wait.
 */
export function shellLines(
  context: PlanContext,
  part: Part,
  at: readonly Position[],
  name: string,
  { fits, pistons }: Shelf,
): readonly NeededLine[] {
  const places = fits.shells.find((each) => each.part === part)?.places ?? [];
  const chosen = at.flatMap((position) => places.filter((each) => each.position === position && each.chosen));
  const left = at.filter((position) => !chosen.some((each) => each.position === position));
  const isWaiting = (position: Position): boolean => waitsFor(context, part, [position]) !== undefined;
  const sizeAt = (position: Position): string =>
    gradeText(gradeAt(position, part, context), context.engine.units.get('length'));
  const sizeToBuy = (position: Position): string =>
    [
      sizeAt(position),
      ...places.flatMap((each) => (each.position === position ? classLacking(each) : [])),
    ].join(', ');
  const base = { ...goodsOf(part), for: name };
  return [
    ...countedBy(chosen.map(codesOf)).map(([code, count]) => {
      const [place] = chosen.filter((each) => codesOf(each) === code);
      const size = place === undefined ? '' : sizeAt(place.position);
      return { ...base, code, size, count, onShelf: count, when: 'now' as const };
    }),
    ...bySize(left.filter(isWaiting), part, context).map(([grade, waiting]) => ({
      ...base,
      ...ofSize(context.engine, part, grade, waiting.length, pistons),
      count: waiting.length,
      when: 'after measuring' as const,
      waitsFor: waitsFor(context, part, waiting),
    })),
    ...bySize(
      left.filter((each) => !isWaiting(each)),
      part,
      context,
    ).flatMap(([grade, known]) =>
      countedBy(known.map(sizeToBuy)).map(([size, count]) => ({
        ...base,
        ...toGet(grade, context),
        size,
        count,
      })),
    ),
  ];
}

/** Pistons for some cylinders: chosen from the shelf where each has its own there, else by the size of the bore. */
export function pistonLines(
  context: PlanContext,
  part: Part,
  at: readonly Position[],
  name: string,
  { fits: { pistons: fit }, pistons }: Shelf,
): readonly NeededLine[] {
  const { engine } = context;
  const chosen = at.flatMap((position) => (fit?.places ?? []).filter((each) => each.position === position));
  const base = { ...goodsOf(part), for: name };
  if (chosen.length === at.length) {
    const sizes = chosen.map(({ piston }) => gradeText(piston.size, engine.units.get('length')));
    return countedBy(sizes).map(([size, count]) => ({
      ...base,
      code: undefined,
      size,
      count,
      onShelf: count,
      when: 'now',
    }));
  }
  return bySize(at, part, context).map(([grade, places]) => {
    const [count, waiting] = [places.length, waitsFor(context, part, places)];
    if (waiting === undefined && NOTHING_FITS.includes(fit?.problem?.kind))
      return { ...base, ...toGet(grade, context), count };
    const sized = { ...base, ...ofSize(engine, part, grade, count, pistons), count };
    return waiting === undefined
      ? { ...sized, when: 'now' }
      : { ...sized, when: 'after measuring', waitsFor: waiting };
  });
}

const NOTHING_FITS: readonly (PistonProblem['kind'] | undefined)[] = ['nothing fits', 'of no one weight'];

/** What a maker's table asks for, and the shelf has not. */
const classLacking = ({ problems }: FittedPlace): readonly string[] =>
  problems.flatMap((each) => (each.kind === 'class not in stock' ? [classText(each.classes)] : []));

/** What has to be read, or stated, before a part is chosen by its clearance. */
function waitsFor(context: PlanContext, part: Part, at: readonly Position[]): string | undefined {
  const fit = context.registry.all.find(({ of, figure }) => of === part.id && figure === 'clearance');
  const isAimed = fit === undefined || at.every((position) => wantedAt(context, fit, position) !== undefined);
  return (
    measureText(unreadFor(context, part, at)) ??
    (isAimed ? undefined : `state limits of new parts for ${fit.label}`)
  );
}

/** Of what the shelf has of that size nothing brings it inside. */
const toGet = (
  grade: Grade,
  { engine }: PlanContext,
): Pick<NeededLine, 'size' | 'code' | 'onShelf' | 'when'> => ({
  size: gradeText(grade, engine.units.get('length')),
  code: undefined,
  onShelf: 0,
  when: 'now',
});

const codesOf = ({ chosen }: FittedPlace): string =>
  [...new Set([chosen?.upper.code ?? '', chosen?.lower.code ?? ''])].join(' and ');

const countedBy = (texts: readonly string[]): readonly (readonly [string, number])[] =>
  [...new Set(texts)].map((text) => [text, texts.filter((each) => each === text).length]);

/** The size that goes with a journal or bore as it was cut: of a bore the larger, of a journal the smaller. */
export function gradeAt(position: Position, part: Part, { engine }: PlanContext): Grade {
  const { grade } = gradeInForce(engine, undefined, part, position);
  return part.sized?.made === 'over' ? grade.upper : grade.lower;
}

/** Of places alike those of one size. */
function bySize(
  at: readonly Position[],
  part: Part,
  context: PlanContext,
): readonly (readonly [Grade, readonly Position[]])[] {
  const graded = at.map((position) => ({ position, grade: gradeAt(position, part, context) }));
  return countedBy(graded.map(({ grade }) => gradeText(grade))).flatMap(([text]) => {
    const same = graded.filter(({ grade }) => gradeText(grade) === text);
    return same[0] === undefined ? [] : [[same[0].grade, same.map(({ position }) => position)] as const];
  });
}
