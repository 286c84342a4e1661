import type { NotCompared } from '../../compare/diff.ts';

export const notComparedText = ({ path, sides }: NotCompared): string =>
  `${path}: not compared, since a document has a problem in ${sides.map(({ name }) => name).join(' and in ')}`;
