import type { UsualParts } from '../../measurement/risk.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import type { Measure } from '../measure.ts';
import { childOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** `usual: { mean: 3.2480, deviation: 0.0002 }`, in the base unit. */
export function readUsualParts(
  node: Node,
  { quantity }: Measure,
  context: DocumentContext,
): UsualParts | undefined {
  const usual = childOf(node, 'usual');
  const [mean, deviation] = ['mean', 'deviation'].map((key) =>
    readAmount(childOf(usual, key), quantity, context),
  );
  if (mean === undefined || deviation === undefined) return undefined;
  if (deviation.amount.n <= 0n) {
    const help = 'write one standard deviation of such parts, above 0';
    return report(context, 'value', deviation.span, `${deviation.written} is not a standard deviation`, help);
  }
  return { mean: toNumber(mean.amount), deviation: toNumber(deviation.amount) };
}
