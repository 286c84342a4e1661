import type { Change } from '../../compare/change.ts';
import { type Diff, newsOf } from '../../compare/diff.ts';

/** The changes of one kind, the worst kind first. */
export interface DiffSection {
  readonly title: string;
  /** What the rows of it are called where they are only counted. */
  readonly folded: boolean;
  /** Only positions are reported, unless all is asked for: there is nothing to compare. */
  readonly listed: boolean;
  readonly changes: readonly Change[];
}

const KINDS: readonly (Pick<DiffSection, 'title'> &
  Partial<DiffSection> & { readonly has: (change: Change) => boolean })[] = [
  { title: 'newly out', has: (change) => newsOf(change) === 'newly out' },
  { title: 'newly undecided', has: (change) => newsOf(change) === 'newly undecided' },
  { title: 'newly in', has: (change) => newsOf(change) === 'newly in' },
  { title: 'changed', has: (change) => newsOf(change) === null && change.state === 'real' },
  { title: 'measured only after', listed: true, has: ({ state }) => state === 'appeared' },
  { title: 'measured only before', listed: true, has: ({ state }) => state === 'disappeared' },
  {
    title: 'within their uncertainty',
    folded: true,
    has: (change) => newsOf(change) === null && change.state === 'within',
  },
  { title: 'the same', folded: true, has: (change) => newsOf(change) === null && change.state === 'same' },
];

/** Every change stands in one section; sections without any are left out. */
export const sectionsOf = ({ changes }: Diff): readonly DiffSection[] =>
  KINDS.flatMap(({ title, folded = false, listed = false, has }) => {
    const of = changes.filter(has);
    return of.length === 0 ? [] : [{ title, folded, listed, changes: of }];
  });

/** `12 within their uncertainty, 3 the same`: what is not shown. */
export const foldedText = (sections: readonly DiffSection[]): string =>
  sections
    .filter(({ folded }) => folded)
    .map(({ title, changes }) => `${changes.length} ${title}`)
    .join(', ');

/** By characteristic, in the order of the sheet. */
export function groupsOf(changes: readonly Change[]): readonly (readonly [string, readonly Change[]])[] {
  const groups = new Map<string, Change[]>();
  for (const change of changes) {
    const { label } = change.characteristic;
    const group = groups.get(label);
    if (group === undefined) groups.set(label, [change]);
    else group.push(change);
  }
  return [...groups];
}
