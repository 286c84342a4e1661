import { didYouMean } from '../diagnostic/suggestion.ts';
import { type FormulaProblem, formulaProblem } from './problem.ts';
import { type FormulaNode, type NameNode, type ParsedFormula, partsOf } from './tree.ts';

/** The names used, each once, in the order in which they first stand. */
export const namesIn = (formula: ParsedFormula): readonly string[] => [
  ...new Set(nameNodes(formula.root).map((node) => node.name)),
];

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
        didYouMean(node.name, known) ?? 'use a name that stands under sizes, or a characteristic',
      ),
    );

const nameNodes = (node: FormulaNode): readonly NameNode[] =>
  node.kind === 'name' ? [node] : partsOf(node).flatMap(nameNodes);
