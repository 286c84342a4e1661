import { didYouMean } from '../diagnostic/suggestion.ts';
import type { Family } from '../layout/family.ts';
import { namedAt } from '../layout/naming.ts';
import type { Parts } from '../layout/part.ts';
import type { Position } from '../layout/position.ts';
import type { Fraction } from '../quantity/fraction.ts';
import type { Quantity } from '../quantity/units.ts';
import { idsCalled } from './alsoCalled.ts';
import { type DocumentContext, report } from './amount.ts';
import { RENAMED_IDS } from './renamedIds.ts';
import { textOf } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** What a document's reader must know of a characteristic; the registry knows the rest. */
export interface Measure {
  readonly id: string;
  /** In trade words. */
  readonly label?: string;
  readonly quantity: Quantity;
  readonly family: Family;
  /** `[a, b]` at one position are the two halves of a pair of shells, not a row of stations. */
  readonly halves?: boolean;
  /** What kind of figure it is, where that is known. */
  readonly figure?: Figure;
  /** Read within a length that its limit names with `per:`, such as any 6 in of a face. */
  readonly isInLength?: boolean;
  /** The name of its grid in a shop document, other than its id. */
  readonly grid?: string;
  /** After how many degrees an angle comes round again: 720 of a crankshaft make a cycle of four strokes. */
  readonly cycle?: Fraction;
  /** Of a test: what people call a pass and a fail. */
  readonly outcomes?: Outcomes;
}

export interface Outcomes {
  readonly pass: string;
  readonly fail: string;
}

/** Of a taper a limit may say from where to where it is taken; form is a difference of several readings. */
export type Figure = 'size' | 'out of round' | 'taper' | 'clearance' | 'other';

export interface Measures {
  readonly parts: Parts;
  readonly find: (id: string) => Measure | undefined;
  readonly ids: () => readonly string[];
}

/** `cylinder taper 3`; what is measured once an engine needs no position. */
export const nameAt = ({ id, label }: Measure, position: Position): string =>
  namedAt(label ?? id.replaceAll('_', ' '), position);

/** A known characteristic, or a report with the nearest name. */
export function readMeasure(
  node: Node | undefined,
  measures: Measures,
  context: DocumentContext,
): Measure | undefined {
  const id = textOf(node);
  if (id === undefined || node === undefined) return undefined;
  const found = measures.find(id);
  if (found !== undefined) return found;
  const { message, help } = unknownMeasure(id, measures);
  return report(context, 'unknown-measure', node.span, message, help);
}

/** What is wrong with an id that no characteristic has: it was another once, is one in other words, or is nearly one. */
export function unknownMeasure(
  id: string,
  measures: Pick<Measures, 'ids'>,
): { readonly message: string; readonly help: string | undefined } {
  const renamed = RENAMED_IDS.get(id);
  const meant = idsCalled(id);
  if (meant.length > 0) {
    return {
      message: `${id} is called ${meant.join(' or ')} here`,
      help: meant.length > 1 ? 'write which' : `write ${meant[0]}`,
    };
  }
  return renamed === undefined
    ? { message: `unknown characteristic ${id}`, help: didYouMean(id, measures.ids()) }
    : { message: `${id} is now ${renamed.now}`, help: `write ${renamed.example}` };
}
