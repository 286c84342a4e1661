import { type Fraction, negate, ZERO } from '../../quantity/fraction.ts';
import { type DocumentContext, parseAmount } from '../amount.ts';
import { childOf, entriesOf, textAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** By part (`pistons`), family of places on it (`crankshaft main`) or position (`pistons 3`), in the base unit. */
export type Grades = ReadonlyMap<string, Fraction>;

/** The service sizes that `fitted:` states: `0.010 under` is negative, `std` nought. */
export function readGrades(root: Node, context: DocumentContext): Grades {
  const grades = new Map<string, Fraction>();
  const put = (name: string, text: string | undefined, node: Node): void => {
    const grade = gradeOf(text, node, context);
    if (grade !== undefined) grades.set(name, grade);
  };
  for (const { key: part, node } of entriesOf(childOf(root, 'fitted'))) {
    for (const { key, node: value } of entriesOf(node)) {
      put(key === 'size' ? part : `${part} ${key}`, textOf(value), value);
    }
    for (const { key, node: value } of entriesOf(childOf(node, 'at'))) {
      put(`${part} ${key}`, textOf(value) ?? textAt(value, 'size'), value);
    }
  }
  return grades;
}

function gradeOf(text: string | undefined, node: Node, context: DocumentContext): Fraction | undefined {
  if (text === 'std') return ZERO;
  const [, size, way] = /^(.+) (under|over)$/.exec(text ?? '') ?? [];
  const amount = size === undefined ? undefined : parseAmount(size, node.span, 'length', context)?.amount;
  return amount === undefined || way === 'over' ? amount : negate(amount);
}
