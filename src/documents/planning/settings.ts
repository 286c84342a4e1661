import type { Place } from '../../diagnostic/place.ts';
import type { Part, Parts } from '../../layout/part.ts';
import { wordsOf } from '../../layout/part.ts';
import { type Amount, type DocumentContext, readAmount, report } from '../amount.ts';
import { type Grade, parseGrade } from '../grades/grade.ts';
import { childOf, entriesOf, itemsOf, namesAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** How a shop plans its work. */
export interface PlanSettings {
  /** By a part's id the sizes to which it is ground or bored, where limits print none. */
  readonly steps: ReadonlyMap<string, readonly Grade[]>;
  /** What polishing takes off a journal's diameter, and honing puts onto a bore's. */
  readonly polish: Amount | undefined;
  readonly honeStock: Amount | undefined;
  /** How much the pistons of one engine may differ in weight. */
  readonly weightSpread: Amount | undefined;
  /** The ids of parts of which each may be cut to a step of its own. */
  readonly separate: ReadonlySet<string>;
  /** Boxes of the page before closing up that somebody has to confirm. */
  readonly required: readonly RequiredBox[];
}

export interface RequiredBox {
  readonly what: string;
  readonly place: Place;
}

export const NO_SETTINGS: PlanSettings = {
  steps: new Map(),
  polish: undefined,
  honeStock: undefined,
  weightSpread: undefined,
  separate: new Set(),
  required: [],
};

export function readPlanSettings(
  node: Node | undefined,
  parts: Parts,
  context: DocumentContext,
): PlanSettings | undefined {
  if (node === undefined) return undefined;
  const separate = namesAt(node, 'separate').flatMap(
    ({ name, span }) => cutPart(name, span, parts, context) ?? [],
  );
  return {
    steps: new Map(
      entriesOf(childOf(node, 'steps')).flatMap(({ key, keySpan, node: list }) => {
        const part = cutPart(key, keySpan, parts, context);
        return part === undefined ? [] : [[part.id, readSteps(list, context)] as const];
      }),
    ),
    polish: readAmount(childOf(node, 'polish'), 'length', context),
    honeStock: readAmount(childOf(node, 'hone_stock'), 'length', context),
    weightSpread: readAmount(childOf(node, 'weight_spread'), 'mass', context),
    separate: new Set(separate.map(({ id }) => id)),
    required: namesAt(node, 'required').map(({ name, span }) => ({
      what: name,
      place: context.source.place(span),
    })),
  };
}

const readSteps = (list: Node, context: DocumentContext): readonly Grade[] =>
  itemsOf(list).flatMap((item) => parseGrade(textOf(item) ?? '', item.span, context) ?? []);

/** A part that is ground or bored to service sizes, by any of its names. */
function cutPart(name: string, span: Node['span'], parts: Parts, context: DocumentContext): Part | undefined {
  const word = name.replaceAll('_', ' ');
  const known = parts.all.filter(isCut);
  const found = known.find((part) => wordsOf(part).includes(word));
  if (found !== undefined) return found;
  const help = `it is one of ${known.map(({ plural }) => plural).join(', ')}`;
  return report(context, 'value', span, `no part that is ground or bored is called ${word}`, help);
}

/** Ground smaller or bored larger itself, and not bought for what is. */
export const isCut = ({ sized }: Part): boolean => sized?.made !== undefined && sized.fits === undefined;
