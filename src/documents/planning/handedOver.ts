import type { Place } from '../../diagnostic/place.ts';
import type { PartAt } from '../../layout/readPart.ts';
import type { DocumentContext } from '../amount.ts';
import { readDate } from '../date.ts';
import { type KnownParts, readParts } from '../session/part.ts';
import { childOf, namesAt, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { type NamedWork, readNamedWork } from './namedWork.ts';

/** What somebody agreed to, by the lines of the plan. */
export interface Agreement {
  readonly by: string;
  readonly date: string | undefined;
  readonly items: readonly NamedWork[];
  readonly place: Place;
}

/** A part that was given away to be worked on. */
export interface Sent {
  readonly part: string;
  /** The parts that these words name; none for what is no part that is measured. */
  readonly parts: readonly PartAt[];
  readonly mark: string | undefined;
  readonly to: string;
  readonly date: string | undefined;
  readonly due: string | undefined;
  readonly returned: string | undefined;
  readonly work: readonly NamedWork[];
  readonly place: Place;
}

/** A box of the page before closing up that somebody ticked. */
export interface Confirmation {
  readonly what: string;
  readonly by: string;
  readonly place: Place;
}

/** What a session or an engine document says of the job beside its readings. */
export interface HandedOver {
  readonly agreed: readonly Agreement[];
  readonly sent: readonly Sent[];
  readonly confirmed: readonly Confirmation[];
}

export const readHandedOver = (root: Node, known: KnownParts, context: DocumentContext): HandedOver => ({
  agreed: oneOrMore(childOf(root, 'agreed')).map((item) => ({
    by: textAt(item, 'by') ?? '',
    date: readDate(childOf(item, 'date'), context),
    items: namesAt(item, 'items').map((each) => readNamedWork(each, known, context)),
    place: context.source.place(item.span),
  })),
  sent: oneOrMore(childOf(root, 'sent')).map((item) => readSent(item, known, context)),
  confirmed: oneOrMore(childOf(root, 'confirmed')).map((item) => ({
    what: textAt(item, 'what') ?? '',
    by: textAt(item, 'by') ?? '',
    place: context.source.place(item.span),
  })),
});

function readSent(item: Node, known: KnownParts, context: DocumentContext): Sent {
  const [date, due, returned] = ['date', 'due', 'returned'].map((key) =>
    readDate(childOf(item, key), context),
  );
  const part = namesAt(item, 'part')[0];
  return {
    part: part?.name ?? '',
    parts: part === undefined ? [] : readParts(part, known, context),
    mark: textAt(item, 'mark'),
    to: textAt(item, 'to') ?? '',
    date,
    due,
    returned,
    work: namesAt(item, 'work').map((each) => readNamedWork(each, known, context)),
    place: context.source.place(item.span),
  };
}

const oneOrMore = (node: Node | undefined): readonly Node[] =>
  node?.kind === 'list' ? node.items : node === undefined ? [] : [node];
