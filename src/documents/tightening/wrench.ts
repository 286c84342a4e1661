import { type Fraction, fraction } from '../../quantity/fraction.ts';
import { type Adapter, wrenchRatio } from '../../torque/adapter.ts';
import type { Joint } from '../../torque/joint.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { childOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

const BACK = 180n;

/** Straight, angled, or at 180 degrees back along the wrench, which shortens the lever. */
export function adapterAt(length: Fraction, angle: Fraction | undefined): Adapter {
  if (angle === undefined || angle.n === 0n) return { kind: 'straight', length };
  return angle.n === BACK * angle.d ? { kind: 'shortening', length } : { kind: 'angled', length, angle };
}

/** In degrees, as a document writes it. */
export function angleOf(adapter: Adapter): Fraction {
  if (adapter.kind === 'angled') return adapter.angle;
  return fraction(adapter.kind === 'shortening' ? BACK : 0n);
}

/** The wrench and the adapter of a torque document; what cannot be is reported. */
export function readAdapter(root: Node, context: DocumentContext): Pick<Joint, 'wrenchLength' | 'adapter'> {
  const node = childOf(root, 'adapter');
  const length = readAmount(childOf(node, 'length'), 'length', context)?.amount;
  const angle = readAmount(childOf(node, 'angle'), 'angle', context)?.amount;
  const wrenchLength = readAmount(childOf(childOf(root, 'wrench'), 'length'), 'length', context)?.amount;
  const adapter = length === undefined ? undefined : adapterAt(length, angle);
  const found = adapter && wrenchRatio(wrenchLength ?? fraction(Number.MAX_SAFE_INTEGER), adapter);
  const wrench = childOf(root, 'wrench');
  if (adapter === undefined && wrench !== undefined && wrenchLength !== undefined && wrenchLength.n <= 0n) {
    report(context, 'value', wrench.span, 'the wrench must have a length');
  }
  if (node !== undefined && found !== undefined && 'problem' in found) {
    report(context, 'value', node.span, found.problem);
  }
  return { wrenchLength, adapter };
}
