import { parseDecimal } from '../../quantity/fraction.ts';
import type { Quantity, Unit } from '../../quantity/units.ts';
import type { Action, AmountRange, ShareOfFinal } from '../../torque/sequence.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readWindow } from '../limits/window.ts';
import { childOf, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** What a pass does, by the keys it may have. */
const ACTIONS = ['to', 'turn', 'loosen', 'stretch', 'check'] as const;
type ActionKey = (typeof ACTIONS)[number];

/** Two things at once that have one meaning: a torque with its stretch, a turn after which stretch is measured. */
const PAIRS: readonly string[] = ['to stretch', 'turn stretch'];

/** Units in which torques and lengths are written, as they are met. */
export interface UnitsWritten {
  readonly see: (quantity: Quantity, unit: Unit) => void;
}

/** The actions of one pass as written: one, or a turn and the stretch measured after it. */
export function readActions(item: Node, context: DocumentContext, written: UnitsWritten): readonly Action[] {
  const keys = ACTIONS.filter((key) => childOf(item, key) !== undefined);
  if (keys.length > 1 && !PAIRS.includes(keys.join(' '))) {
    report(
      context,
      'value',
      item.span,
      `a pass does one thing, and this one does ${keys.length}: ${keys.join(', ')}`,
      'write a pass for each; `to` or `turn` may stand beside `stretch`',
    );
    return [];
  }
  const read = (key: ActionKey): Action | undefined => readAction(item, key, context, written);
  const [first, second] = keys;
  if (first === undefined) return [];
  const alone = first === 'to' && second === 'stretch' ? [read('stretch')] : keys.map(read);
  return alone.flatMap((action) => action ?? []);
}

function readAction(
  item: Node,
  key: ActionKey,
  context: DocumentContext,
  written: UnitsWritten,
): Action | undefined {
  const node = childOf(item, key);
  const window = (of: Node | undefined, quantity: Quantity): AmountRange | undefined => {
    const found = readWindow(of, quantity, context);
    if (found === undefined) return undefined;
    written.see(quantity, found.unit);
    return { least: found.least, greatest: found.greatest };
  };
  if (key === 'turn') return byAngle('turn', window(node, 'angle'));
  if (key === 'loosen') {
    return textOf(node) === 'fully' ? { kind: 'loosen' } : byAngle('loosen', window(node, 'angle'));
  }
  if (key === 'stretch') {
    const stretch = window(node, 'length');
    const torque = window(childOf(item, 'to'), 'torque');
    return stretch && { kind: 'stretch', stretch, ...(torque === undefined ? {} : { torque }) };
  }
  const torque = readShare(node) ?? window(node, 'torque');
  if (torque === undefined || key === 'to') return torque && { kind: 'to', torque };
  const atMost = readAmount(childOf(item, 'at_most'), 'torque', context)?.amount;
  return { kind: 'check', torque, ...(atMost === undefined ? {} : { atMost }) };
}

const byAngle = <K extends 'turn' | 'loosen'>(
  kind: K,
  angle: AmountRange | undefined,
): { readonly kind: K; readonly angle: AmountRange } | undefined => angle && { kind, angle };

/** `70 %`. */
function readShare(node: Node | undefined): ShareOfFinal | undefined {
  const percent = /^([-+]?(?:\d+(?:\.\d+)?|\.\d+)) ?%$/.exec(textOf(node) ?? '')?.[1];
  return percent === undefined ? undefined : { percent: parseDecimal(percent) };
}
