import type { Place } from '../../diagnostic/place.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { type Amount, type DocumentContext, readAmount } from '../amount.ts';
import { readDate } from '../date.ts';
import { oneOf } from '../oneOf.ts';
import { childOf, itemsOf, namesAt, textAt, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { type KnownParts, readParts } from './part.ts';

/** What is to become of a part. */
export const REMEDIES = ['reuse', 'renew', 'machine', 'hold'] as const;

export type Remedy = (typeof REMEDIES)[number];

/** What was seen and has no number: `found: [{ on: main 3 shell lower, is: wiped to copper, do: renew }]`. */
export interface Observation {
  /** As written, a name for each thing. */
  readonly on: readonly string[];
  /** The parts among them, and where; none for an oil pump or a hose. */
  readonly parts: readonly PartAt[];
  readonly is: string;
  readonly remedy: Remedy | undefined;
  /** How deep it goes into the surface, where that was measured. */
  readonly depth: Amount | undefined;
  /** Paths of pictures, as written. */
  readonly photos: readonly string[];
  readonly by: string | undefined;
  readonly place: Place;
}

export const readObservations = (
  root: Node,
  known: KnownParts,
  context: DocumentContext,
): readonly Observation[] =>
  itemsOf(childOf(root, 'found')).map((item) => {
    const on = namesAt(item, 'on');
    readDate(childOf(item, 'date'), context);
    return {
      on: on.map(({ name }) => name),
      parts: on.flatMap((each) => readParts(each, known, context)),
      is: textAt(item, 'is') ?? '',
      remedy: oneOf(REMEDIES, childOf(item, 'do'), context),
      depth: readAmount(childOf(item, 'depth'), 'length', context),
      photos: textsOf(childOf(item, 'photos')),
      by: textAt(item, 'by'),
      place: context.source.place(item.span),
    };
  });

/** Found fit for use, by somebody who answers for it: named there, or as the one who made the session. */
export const isDecidedReuse = (
  { remedy, by }: Observation,
  session: { readonly by: string | undefined },
): boolean => remedy === 'reuse' && (by ?? session.by) !== undefined;
