import { type Grade, sameGrade } from '../../documents/grades/grade.ts';
import type { Lacking } from './pistonChoice.ts';
import { pistonsOfSize, type ShelfPiston, type ShelfPistons } from './shelfPistons.ts';

/** The sizes of bores, each with how many pistons of it they need and what the shelf has. */
export interface NeededSize {
  readonly size: Grade;
  readonly needed: number;
  readonly pistons: readonly ShelfPiston[];
}

export function sizesOf(
  bores: readonly { readonly grade: Grade }[],
  shelf: ShelfPistons,
): readonly NeededSize[] {
  const grades = bores.map(({ grade }) => grade);
  const isFirst = (grade: Grade, index: number): boolean =>
    grades.findIndex((each) => sameGrade(each, grade)) === index;
  return grades.filter(isFirst).map((size) => ({
    size,
    needed: grades.filter((each) => sameGrade(each, size)).length,
    pistons: pistonsOfSize(shelf, size),
  }));
}

export const lackingOf = (sizes: readonly NeededSize[]): readonly Lacking[] =>
  sizes
    .map(({ size, needed, pistons }) => ({ size, needed, free: pistons.length }))
    .filter(({ needed, free }) => free < needed);
