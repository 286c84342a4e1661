import type { Place } from '../../diagnostic/place.ts';
import { type Amount, type DocumentContext, parseAmount } from '../amount.ts';
import { readDate } from '../date.ts';
import type { Named } from '../yaml/access.ts';
import { childOf, readNamed, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** The check of an instrument on its standard before measuring, in lengths. */
export interface InstrumentCheck {
  readonly instrument: Named;
  readonly standard: Amount;
  readonly read: Amount;
  /** Where it differs from the session's. */
  readonly date: string | undefined;
  readonly place: Place;
}

export function readCheck(item: Node, context: DocumentContext): InstrumentCheck | undefined {
  const instrument = readNamed(childOf(item, 'instrument'));
  const standard = lengthAt(item, 'standard', context);
  const read = lengthAt(item, 'read', context);
  const date = readDate(childOf(item, 'date'), context);
  return instrument === undefined || standard === undefined || read === undefined
    ? undefined
    : { instrument, standard, read, date, place: context.source.place(item.span) };
}

/** A wrench is checked on a tester: what is no length is kept, and not looked at here. */
function lengthAt(item: Node, key: string, context: DocumentContext): Amount | undefined {
  const node = childOf(item, key);
  const text = textOf(node);
  if (node === undefined || text === undefined) return undefined;
  return parseAmount(text, node.span, 'length', { ...context, problems: [] });
}
