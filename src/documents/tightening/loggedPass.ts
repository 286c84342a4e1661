import { didYouMean } from '../../diagnostic/suggestion.ts';
import { type Fraction, subtract } from '../../quantity/fraction.ts';
import type { Quantity } from '../../quantity/units.ts';
import type { Action } from '../../torque/sequence.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textOf, textsOf } from '../yaml/access.ts';
import type { Entry, Node, Span } from '../yaml/node.ts';
import { readActions } from './passes.ts';
import type { TorqueDocument } from './torque.ts';

/** What one fastener was brought to, in the base unit; undefined where it was not reached (`~`). */
export interface LoggedTorque {
  readonly amount: Fraction | undefined;
  readonly written: string;
  readonly span: Span;
}

/** One pass as it was logged. */
export interface LoggedPass {
  readonly action: Action;
  /** Names of fasteners, groups written out; all of them when absent. */
  readonly fasteners: readonly string[] | undefined;
  /** Torque, angle or stretch, as the action has it. */
  readonly values: ReadonlyMap<string, LoggedTorque>;
  /** Beside values of stretch. */
  readonly torques: ReadonlyMap<string, LoggedTorque>;
  readonly leftOut: readonly string[];
  readonly span: Span;
}

/** What one item of `passes` says was done: one action, or a turn and the stretch measured after it. */
export function readLoggedPass(
  item: Node,
  document: TorqueDocument,
  context: DocumentContext,
): readonly LoggedPass[] {
  const actions = readActions(item, context, { see: () => undefined });
  const [fasteners, leftOut] = [childOf(item, 'fasteners'), childOf(item, 'left_out')];
  checkNames(itemsOf(fasteners), document, context, true);
  checkNames(itemsOf(leftOut), document, context, false);
  return actions.map((action, index) => {
    const isLast = index === actions.length - 1;
    return {
      action,
      fasteners: fasteners && [
        ...new Set(textsOf(fasteners).flatMap((name) => document.joint.sequence.groups.get(name) ?? [name])),
      ],
      values: isLast ? readValues(childOf(item, 'values'), quantityOf(action), document, context) : new Map(),
      torques: isLast ? readValues(childOf(item, 'torques'), 'torque', document, context) : new Map(),
      leftOut: textsOf(leftOut),
      span: item.span,
    };
  });
}

const quantityOf = ({ kind }: Action): Quantity =>
  kind === 'stretch' ? 'length' : kind === 'to' || kind === 'check' ? 'torque' : 'angle';

function readValues(
  node: Node | undefined,
  quantity: Quantity,
  document: TorqueDocument,
  context: DocumentContext,
): ReadonlyMap<string, LoggedTorque> {
  const entries = entriesOf(node);
  for (const entry of entries) checkName(entry.key, entry.keySpan, document, context, false);
  return new Map(
    entries.flatMap((entry): readonly (readonly [string, LoggedTorque])[] => {
      const reached = readLoggedTorque(entry, quantity, context);
      return reached === undefined ? [] : [[entry.key, reached]];
    }),
  );
}

/** An amount, `~`, or of a stretch the lengths slack and tight. */
function readLoggedTorque(
  { node }: Entry,
  quantity: Quantity,
  context: DocumentContext,
): LoggedTorque | undefined {
  if (node.kind === 'scalar' && node.value === null) {
    return { amount: undefined, written: '~', span: node.span };
  }
  if (scalarOf(node) !== undefined) {
    const read = readAmount(node, quantity, context);
    return read && { amount: read.amount, written: read.written, span: node.span };
  }
  const zero = readAmount(childOf(node, 'zero'), quantity, context);
  const tight = readAmount(childOf(node, 'tight'), quantity, context);
  if (zero === undefined || tight === undefined) return undefined;
  if (quantity === 'length') {
    const written = `${tight.written} − ${zero.written}`;
    return { amount: subtract(tight.amount, zero.amount), written, span: node.span };
  }
  return report(context, 'value', node.span, `zero and tight are lengths, and a ${quantity} is wanted here`);
}

/** Reports the names that the joint does not have; groups where they may stand. */
export function checkNames(
  items: readonly Node[],
  document: TorqueDocument,
  context: DocumentContext,
  groups: boolean,
): void {
  for (const item of items) {
    const name = textOf(item);
    if (name !== undefined) checkName(name, item.span, document, context, groups);
  }
}

function checkName(
  name: string,
  span: Span,
  { name: of, joint }: TorqueDocument,
  context: DocumentContext,
  groups: boolean,
): void {
  const { sequence } = joint;
  const known = groups ? [...sequence.fasteners, ...sequence.groups.keys()] : sequence.fasteners;
  if (known.includes(name)) return;
  const help = didYouMean(name, known) ?? `it has ${known.join(', ')}`;
  report(context, 'unknown-position', span, `${of} has no fastener ${name}`, help);
}
