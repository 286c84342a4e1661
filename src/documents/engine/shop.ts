import type { Parts } from '../../layout/part.ts';
import { type DocumentContext, readAmount } from '../amount.ts';
import { type PlanSettings, readPlanSettings } from '../planning/settings.ts';
import type { Station } from '../session/reading.ts';
import { childOf, entriesOf, itemsOf, textAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

export type DecisionRule = 'simple' | 'guarded';

/** How a part is gone over: rows along it, columns round it. */
export interface ReadingGrid {
  readonly stations: readonly Station[];
  readonly directions: readonly string[];
}

export interface ShopDocument {
  readonly name: string | undefined;
  readonly decisionRule: DecisionRule | undefined;
  /** By the characteristic's id without its last word, such as `main_journal`. */
  readonly grids: ReadonlyMap<string, ReadingGrid>;
  readonly planning: PlanSettings | undefined;
}

export const readShop = (root: Node, parts: Parts, context: DocumentContext): ShopDocument => ({
  name: textAt(root, 'name'),
  decisionRule: readDecisionRule(root),
  grids: new Map(
    entriesOf(childOf(root, 'grids')).map(({ key, node }) => [key, readGrid(node, context)] as const),
  ),
  planning: readPlanSettings(childOf(root, 'plan'), parts, context),
});

export function readDecisionRule(root: Node): DecisionRule | undefined {
  const rule = textAt(root, 'decision_rule');
  return rule === 'simple' || rule === 'guarded' ? rule : undefined;
}

const readGrid = (node: Node, context: DocumentContext): ReadingGrid => ({
  stations: readStations(childOf(node, 'stations'), context),
  directions: itemsOf(childOf(node, 'directions')).flatMap((item) => textOf(item) ?? []),
});

/** `[front, rear]`, or `{ front: 0.25 in, rear: 1.75 in }` with distances along the part. */
export function readStations(node: Node | undefined, context: DocumentContext): readonly Station[] {
  if (node?.kind === 'list') return itemsOf(node).flatMap((item) => ({ name: textOf(item) ?? '' }));
  return entriesOf(node).map(({ key, node: value }) => {
    const distance = readAmount(value, 'length', context);
    return distance === undefined ? { name: key } : { name: key, distance: distance.amount };
  });
}
