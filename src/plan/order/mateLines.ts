import { gradeInForce } from '../../checks/grades/gradeInForce.ts';
import { type Grade, gradeText } from '../../documents/grades/grade.ts';
import { classText } from '../../documents/limits/choices.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { Fits } from '../fit/fits.ts';
import type { ShelfPistons } from '../fit/shelfPistons.ts';
import type { FittedPlace } from '../fit/shellFit.ts';
import type { PlanContext } from '../work/context.ts';
import type { Awaited } from './awaited.ts';
import { isRings, ofSize } from './cutLines.ts';
import type { OrderLine } from './orderLine.ts';

export interface Shelf {
  readonly fits: Fits;
  readonly pistons: ShelfPistons;
}

/** What is bought for a part that is back from the machine shop: what the shelf has was chosen by its size. */
export function awaitedLines(context: PlanContext, awaited: Awaited, shelf: Shelf): readonly OrderLine[] {
  const { machined, mate, positions, places } = awaited;
  const { engine } = context;
  const name = `${machined.sized?.made === 'over' ? 'bored' : 'ground'} ${machined.plural}`;
  if (mate.sized?.liesIn !== undefined) return shellLines(context, mate, places, name, shelf);
  const [first] = positions;
  if (first === undefined) return [];
  const grade = gradeInForce(engine, undefined, machined, first).grade.upper;
  const count = isRings(mate) ? positions.length : places.length;
  const sized = ofSize(engine, mate, grade, count, shelf.pistons);
  return [{ what: isRings(mate) ? 'ring sets' : mate.plural, ...sized, count, when: 'now', for: name }];
}

/** Shells of some bearings: those that were chosen from the shelf by their codes, the others by the size of the journal. */
export function shellLines(
  context: PlanContext,
  part: Part,
  at: readonly Position[],
  name: string,
  { fits, pistons }: Shelf,
): readonly OrderLine[] {
  const places = fits.shells.find((each) => each.part === part)?.places ?? [];
  const chosen = at.flatMap((position) => places.filter((each) => each.position === position && each.chosen));
  const left = at.filter((position) => !chosen.some((each) => each.position === position));
  // Measured, and what the shelf has of that size brings nothing inside.
  const isInVain = (position: Position): boolean =>
    places.some(
      (each) => each.position === position && each.problems.some(({ kind }) => kind === 'nothing fits'),
    );
  const sizeAt = (position: Position): string =>
    gradeText(gradeAt(position, part, context), context.engine.units.get('length'));
  const sizeToBuy = (position: Position): string =>
    [
      sizeAt(position),
      ...places.flatMap((each) => (each.position === position ? classLacking(each) : [])),
    ].join(', ');
  const base = { what: `${part.label} pairs`, for: name } as const;
  return [
    ...countedBy(chosen.map(codesOf)).map(([code, count]) => {
      const [place] = chosen.filter((each) => codesOf(each) === code);
      const size = place === undefined ? '' : sizeAt(place.position);
      return { ...base, code, size, count, onShelf: count, when: 'now' as const };
    }),
    ...bySize(
      left.filter((each) => !isInVain(each)),
      part,
      context,
    ).map(([grade, count]) => ({
      ...base,
      ...ofSize(context.engine, part, grade, count, pistons),
      count,
      when: 'after measuring' as const,
    })),
    ...countedBy(left.filter(isInVain).map(sizeToBuy)).map(([size, count]) => ({
      ...base,
      size,
      code: undefined,
      onShelf: 0,
      count,
      when: 'now' as const,
    })),
  ];
}

/** Pistons that were chosen from the shelf for some cylinders; none unless each of these has its own there. */
export function pistonLines(
  { engine }: PlanContext,
  part: Part,
  at: readonly Position[],
  name: string,
  { fits: { pistons } }: Shelf,
): readonly OrderLine[] {
  if (part.id !== 'piston' || pistons === undefined) return [];
  const chosen = at.flatMap((position) => pistons.places.filter((each) => each.position === position));
  if (chosen.length < at.length) return [];
  const sizes = chosen.map(({ piston }) => gradeText(piston.size, engine.units.get('length')));
  return countedBy(sizes).map(([size, count]) => ({
    what: part.plural,
    code: undefined,
    size,
    count,
    onShelf: count,
    when: 'now',
    for: name,
  }));
}

/** What a maker's table asks for, and the shelf has not. */
const classLacking = ({ problems }: FittedPlace): readonly string[] =>
  problems.flatMap((each) => (each.kind === 'class not in stock' ? [classText(each.classes)] : []));

const codesOf = ({ chosen }: FittedPlace): string =>
  [...new Set([chosen?.upper.code ?? '', chosen?.lower.code ?? ''])].join(' and ');

const countedBy = (texts: readonly string[]): readonly (readonly [string, number])[] =>
  [...new Set(texts)].map((text) => [text, texts.filter((each) => each === text).length]);

const gradeAt = (position: Position, part: Part, { engine }: PlanContext): Grade =>
  gradeInForce(engine, undefined, part, position).grade.lower;

function bySize(
  at: readonly Position[],
  part: Part,
  context: PlanContext,
): readonly (readonly [Grade, number])[] {
  const grades = at.map((position) => gradeAt(position, part, context));
  return countedBy(grades.map((grade) => gradeText(grade))).flatMap(([text, count]) => {
    const grade = grades.find((each) => gradeText(each) === text);
    return grade === undefined ? [] : [[grade, count] as const];
  });
}
