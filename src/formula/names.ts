import { didYouMean } from '../diagnostic/suggestion.ts';
import { FUNCTIONS } from './functions.ts';
import { type FormulaProblem, formulaProblem } from './problem.ts';
import { type FormulaNode, type NameNode, type ParsedFormula, partsOf, referenceText } from './tree.ts';

/** The names used, each once, in the order in which they first stand. */
export const namesIn = (formula: ParsedFormula): readonly string[] => [
  ...new Set(nameNodes(formula.root).map((node) => node.name)),
];

/** A name at the positions that are meant. */
export interface UsedReference extends NameNode {
  /** As values are looked up. */
  readonly text: string;
  /** Wherever it stands, a function takes as many values as it has. */
  readonly maySeveral: boolean;
}

/** The references used, each once, in the order in which they first stand. */
export function referencesIn(formula: ParsedFormula): readonly UsedReference[] {
  const found = new Map<string, UsedReference>();
  collect(formula.root, false, found);
  return [...found.values()];
}

function collect(node: FormulaNode, isTaken: boolean, found: Map<string, UsedReference>): void {
  if (node.kind === 'name') {
    const text = referenceText(node);
    const maySeveral = isTaken && (found.get(text)?.maySeveral ?? true);
    found.set(text, { ...(found.get(text) ?? node), text, maySeveral });
  }
  const takes = node.kind === 'call' && FUNCTIONS[node.name].takesSeveral === true;
  for (const part of partsOf(node)) collect(part, takes, found);
}

/**
 * A problem at each place where a name is used that nothing goes by, so that a slip is found when the
 * document is read and not only once there is a reading.
 */
export const unknownNames = (formula: ParsedFormula, known: ReadonlySet<string>): readonly FormulaProblem[] =>
  nameNodes(formula.root)
    .filter((node) => !known.has(node.name))
    .map((node) =>
      formulaProblem(
        node,
        `no size or characteristic is called ${node.name}`,
        didYouMean(node.name, known) ?? 'use a name under sizes, or a characteristic',
      ),
    );

const nameNodes = (node: FormulaNode): readonly NameNode[] =>
  node.kind === 'name' ? [node] : partsOf(node).flatMap(nameNodes);
