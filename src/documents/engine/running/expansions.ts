import { type Expansion, expansionOf, statedExpansion } from '../../../measurement/expansion.ts';
import { compare, type Fraction, fraction, multiply, parseDecimal } from '../../../quantity/fraction.ts';
import { type DocumentContext, report } from '../../amount.ts';
import { childOf, entriesOf, textOf } from '../../yaml/access.ts';
import type { Node, Span } from '../../yaml/node.ts';

/** What each part expands by: as stated, else as its material does. */
export function readExpansions(
  root: Node,
  context: DocumentContext,
): ReadonlyMap<string, Expansion | undefined> {
  const materials = new Map(
    entriesOf(childOf(root, 'materials')).map(({ key, node }) => [key, textOf(node) ?? '']),
  );
  const known = new Map([...materials].map(([key, material]) => [key, expansionOf(material)]));
  for (const { key, node } of entriesOf(childOf(root, 'expansion'))) {
    const coefficient = readCoefficient(textOf(node) ?? '', node.span, context);
    if (coefficient !== undefined) known.set(key, statedExpansion(coefficient, materials.get(key)));
  }
  return known;
}

const WRITTEN = /^(\d+(?:\.\d+)?|\.\d+)(?:e-(\d))? per deg([CF])$/;

/** From half of what invar does to four times what aluminium does, for one degree Celsius. */
const LEAST = fraction(5, 10_000_000);
const MOST = fraction(1, 10_000);

function readCoefficient(written: string, span: Span, context: DocumentContext): Fraction | undefined {
  const [, digits, exponent = '0', degree] = WRITTEN.exec(written) ?? [];
  if (digits === undefined) return undefined;
  const figure = multiply(parseDecimal(digits), fraction(1n, 10n ** BigInt(exponent)));
  const coefficient = degree === 'F' ? multiply(figure, fraction(9, 5)) : figure;
  if (compare(coefficient, LEAST) >= 0 && compare(coefficient, MOST) <= 0) return coefficient;
  return report(
    context,
    'value',
    span,
    `${written} is not the expansion of a metal: metals grow by 1e-6 to 40e-6 of their length for one degree`,
    'write it as a share of the length, such as 19.4e-6 per degC',
  );
}
