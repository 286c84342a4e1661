import { type Characteristic, placesOf } from '../../characteristics/characteristic.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import { placesText } from '../work/placesText.ts';
import { renewedWith } from '../work/renewal/renewed.ts';

/** `measure main housing bore 1 to 3; main journal diameter 2`; undefined where there is nothing left to measure. */
export const measureText = (figures: readonly string[]): string | undefined =>
  figures.length === 0 ? undefined : `measure ${figures.join('; ')}`;

/**
 * What a part is bought by at some places, and nobody has read: of shells the housing and the journal. `anew` says of what it
 * is bought for that it is read again in any case: `once ground`, `of the new crankshaft`.
 */
export function unreadFor(
  context: PlanContext,
  { sized }: Part,
  at: readonly Position[],
  anew?: string,
): readonly string[] {
  const [housings = [], machined = []] = [sized?.liesIn, sized?.fits].map((id) => sizesOf(id, at, context));
  const housing = context.registry.parts.find(sized?.liesIn ?? '');
  const renewedAt = ({ position }: Place): Part | undefined =>
    housing && renewedWith(context, housing, position);
  return [
    ...[...new Set(housings.map(renewedAt))].flatMap((renewed) => {
      const some = housings.filter((each) => renewedAt(each) === renewed);
      return renewed === undefined
        ? unreadTexts(some, context)
        : figureTexts(some, context).map((each) => `${each} of the new ${renewed.label}`);
    }),
    ...(anew === undefined
      ? unreadTexts(machined, context)
      : figureTexts(machined, context).map((each) => `${each} ${anew}`)),
  ];
}

/** Of all shells of a kind the housings that nobody has read. */
export const unreadHousings = (context: PlanContext, { sized, family }: Part): readonly string[] =>
  unreadTexts(sizesOf(sized?.liesIn, context.engine.document.layout.positionsOf(family), context), context);

function sizesOf(id: string | undefined, at: readonly Position[], context: PlanContext): readonly Place[] {
  const part = context.registry.parts.find(id ?? '');
  const characteristic = part && sizeOfPart(context, part);
  if (part === undefined || characteristic === undefined) return [];
  return at.flatMap((each) => {
    const position = relateOne(context.engine.document.layout, each, part.family);
    return position === undefined ? [] : [{ characteristic, position }];
  });
}

/** What these figures are worked out from, by the first of their ways, and nobody has read. */
export const unreadBehind = (rows: readonly Row[], context: PlanContext): readonly string[] =>
  unreadTexts(
    rows.flatMap(({ characteristic, position }) => {
      const [first] = characteristic.derivations;
      const { engine, registry } = context;
      const places = first && placesOf(first, registry, engine.document.layout, position);
      return (places ?? []).flatMap((each): readonly Place[] => {
        const of = registry.find(each.id);
        return of === undefined ? [] : [{ characteristic: of, position: each.position }];
      });
    }),
    context,
  );

interface Place {
  readonly characteristic: Characteristic;
  readonly position: Position;
}

const unreadTexts = (places: readonly Place[], context: PlanContext): readonly string[] =>
  figureTexts(
    places.filter(
      (asked) =>
        !context.state.rows.some(
          ({ characteristic, position, routes }) =>
            characteristic === asked.characteristic && position === asked.position && routes.length > 0,
        ),
    ),
    context,
  );

/** `main housing bore 1 to 3`, each figure with its places. */
const figureTexts = (places: readonly Place[], { engine }: PlanContext): readonly string[] =>
  [...new Set(places.map(({ characteristic }) => characteristic))].map((of) => {
    const at = places.filter(({ characteristic }) => characteristic === of).map(({ position }) => position);
    return [of.label, placesText(at, engine.document.layout)].filter(Boolean).join(' ');
  });
