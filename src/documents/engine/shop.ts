import { didYouMean } from '../../diagnostic/suggestion.ts';
import { unknownNames } from '../../formula/names.ts';
import { parseFormula } from '../../formula/parse.ts';
import { isFormulaProblem } from '../../formula/problem.ts';
import type { ParsedFormula } from '../../formula/tree.ts';
import { AXES } from '../../layout/axis.ts';
import type { Family } from '../../layout/family.ts';
import { familyOf } from '../../layout/family.ts';
import { QUANTITIES, type Quantity } from '../../quantity/units.ts';
import { type DocumentContext, readAmount, report, type UnitsInForce } from '../amount.ts';
import type { Station } from '../session/reading.ts';
import { childOf, entriesOf, itemsOf, textAt, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

export type DecisionRule = 'simple' | 'guarded';

/** How a part is gone over: rows along it, columns round it. */
export interface ReadingGrid {
  readonly stations: readonly Station[];
  readonly directions: readonly string[];
}

export interface ShopDocument {
  readonly decisionRule: DecisionRule | undefined;
  /** By the characteristic's id without its last word, such as `main_journal`. */
  readonly grids: ReadonlyMap<string, ReadingGrid>;
}

export const readShop = (root: Node, context: DocumentContext): ShopDocument => ({
  decisionRule: readDecisionRule(root),
  grids: new Map(
    entriesOf(childOf(root, 'grids')).map(({ key, node }) => [key, readGrid(node, context)] as const),
  ),
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

/** A characteristic that a shop adds: read directly, or worked out by a formula of its own. */
export interface OwnCharacteristic {
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly family: Family;
  /** Words for the part that it is of, and for others that it depends on. */
  readonly parts: readonly string[];
  readonly formula: ParsedFormula | undefined;
  /** In which the formula's amounts enter and leave. */
  readonly units: UnitsInForce;
}

/** `characteristics:` of a shop or limits document. */
export const readOwnCharacteristics = (root: Node, context: DocumentContext): readonly OwnCharacteristic[] =>
  entriesOf(childOf(root, 'characteristics')).map(({ key, node }) => ({
    id: key,
    label: textAt(node, 'label') ?? key.replaceAll('_', ' '),
    quantity: oneOf(QUANTITIES, childOf(node, 'quantity'), 'length', context),
    parts: textsOf(childOf(node, 'part')),
    family: familyOf(oneOf(AXES, childOf(node, 'positions'), 'engine', context)),
    formula: readFormula(childOf(node, 'formula'), context),
    units: context.units,
  }));

/** Names in the formulas of a shop's own characteristics that nothing goes by; our own and the shop's are known. */
export function checkOwnFormulas(root: Node, known: ReadonlySet<string>, context: DocumentContext): void {
  for (const { node } of entriesOf(childOf(root, 'characteristics'))) {
    const stated = childOf(node, 'formula');
    const formula = parseFormula(textOf(stated) ?? '');
    if (stated === undefined || isFormulaProblem(formula)) continue;
    const [unknown] = unknownNames(formula, known);
    if (unknown === undefined) continue;
    report(
      context,
      'formula',
      stated.span,
      `in the formula ${formula.text}: ${unknown.message}`,
      unknown.help,
    );
  }
}

/** A formula that parses, or a report of what is wrong in it. */
export function readFormula(node: Node | undefined, context: DocumentContext): ParsedFormula | undefined {
  const text = textOf(node);
  if (text === undefined || node === undefined) return undefined;
  const formula = parseFormula(text);
  if (!isFormulaProblem(formula)) return formula;
  return report(context, 'formula', node.span, `in the formula ${text}: ${formula.message}`, formula.help);
}

function oneOf<T extends string>(
  allowed: readonly T[],
  node: Node | undefined,
  otherwise: T,
  context: DocumentContext,
): T {
  const text = textOf(node)?.replaceAll('_', ' ');
  if (text === undefined || node === undefined) return otherwise;
  const found = allowed.find((each) => each === text);
  if (found !== undefined) return found;
  const help = didYouMean(text, allowed) ?? `one of ${allowed.join(', ')}`;
  report(context, 'value', node.span, `${text} is not known here`, help);
  return otherwise;
}
