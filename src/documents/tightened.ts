import { didYouMean } from '../diagnostic/suggestion.ts';
import { type Fraction, subtract } from '../quantity/fraction.ts';
import type { Quantity } from '../quantity/units.ts';
import type { Action } from '../torque/sequence.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textOf, textsOf } from './access.ts';
import { type DocumentContext, readAmount, report } from './amount.ts';
import { isCalendarDate } from './date.ts';
import type { Entry, Node, Span } from './node.ts';
import { readActions } from './passes.ts';
import type { Named } from './reading.ts';
import type { TorqueDocument } from './torque.ts';

/** What one fastener was brought to, in the base unit; undefined where it was not reached (`~`). */
export interface Reached {
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
  readonly values: ReadonlyMap<string, Reached>;
  /** Beside values of stretch. */
  readonly torques: ReadonlyMap<string, Reached>;
  readonly leftOut: readonly string[];
  readonly span: Span;
}

/** How a joint was tightened. */
export interface TighteningLog {
  readonly document: TorqueDocument;
  /** Where it is not the session's. */
  readonly date: string | undefined;
  readonly with: Named | undefined;
  readonly lubricant: Named | undefined;
  readonly fasteners: 'new' | 'reused' | undefined;
  readonly confirmed: 'all' | readonly string[];
  readonly order: readonly Named[] | undefined;
  /** Undefined where no passes were written down. */
  readonly passes: readonly LoggedPass[] | undefined;
  readonly span: Span;
}

/** The torque documents that a session may speak of. */
export interface KnownSequences {
  readonly documents: readonly TorqueDocument[];
  /** Of documents that have problems of their own: a log of them cannot be judged. */
  readonly broken: ReadonlySet<string>;
}

export const readTightened = (
  root: Node,
  known: KnownSequences,
  context: DocumentContext,
): readonly TighteningLog[] =>
  itemsOf(childOf(root, 'tightened')).flatMap((item) => readLog(item, known, context) ?? []);

function readLog(item: Node, known: KnownSequences, context: DocumentContext): TighteningLog | undefined {
  const node = childOf(item, 'sequence');
  const document = findSequence(node, known, context);
  checkDate(childOf(item, 'date'), context);
  if (document === undefined || node === undefined) return undefined;
  const passes = childOf(item, 'passes');
  const order = childOf(item, 'order');
  const fasteners = textOf(childOf(item, 'fasteners'));
  checkNames(itemsOf(order), document, context, false);
  return {
    document,
    date: textOf(childOf(item, 'date')),
    with: namedAt(item, 'with'),
    lubricant: namedAt(item, 'lubricant'),
    fasteners: fasteners === 'new' || fasteners === 'reused' ? fasteners : undefined,
    confirmed: textOf(childOf(item, 'confirmed')) === 'all' ? 'all' : textsOf(childOf(item, 'confirmed')),
    order: order === undefined ? undefined : itemsOf(order).flatMap((each) => namedOf(each) ?? []),
    passes: passes && itemsOf(passes).flatMap((pass) => readPass(pass, document, context)),
    span: node.span,
  };
}

function findSequence(
  node: Node | undefined,
  { documents, broken }: KnownSequences,
  context: DocumentContext,
): TorqueDocument | undefined {
  const name = textOf(node);
  if (name === undefined || node === undefined || broken.has(name)) return undefined;
  const byName = documents.filter((each) => each.name === name);
  const found = byName.length > 0 ? byName : documents.filter(({ joint }) => joint.sequence.joint === name);
  if (found.length > 1) {
    const paths = found.map(({ path }) => path).join(', ');
    return report(
      context,
      'value',
      node.span,
      `${name} may be any of ${paths}`,
      'give each a name of its own',
    );
  }
  if (found[0] !== undefined) return found[0];
  const names = [...documents.map((each) => each.name), ...broken];
  const has = names.length === 0 ? 'write one with kind: torque' : `it has ${names.join(', ')}`;
  return report(
    context,
    'value',
    node.span,
    `the engine has no torque document ${name}`,
    didYouMean(name, names) ?? has,
  );
}

function checkDate(node: Node | undefined, context: DocumentContext): void {
  const text = textOf(node) ?? '';
  if (node !== undefined && /^\d{4}-\d\d-\d\d$/.test(text) && !isCalendarDate(text)) {
    report(context, 'value', node.span, `${text} is not in the calendar`);
  }
}

function readPass(item: Node, document: TorqueDocument, context: DocumentContext): readonly LoggedPass[] {
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
): ReadonlyMap<string, Reached> {
  const entries = entriesOf(node);
  for (const entry of entries) checkName(entry.key, entry.keySpan, document, context, false);
  return new Map(
    entries.flatMap((entry): readonly (readonly [string, Reached])[] => {
      const reached = readReached(entry, quantity, context);
      return reached === undefined ? [] : [[entry.key, reached]];
    }),
  );
}

/** An amount, `~`, or of a stretch the lengths slack and tight. */
function readReached({ node }: Entry, quantity: Quantity, context: DocumentContext): Reached | undefined {
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

function checkNames(
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

function namedOf(node: Node | undefined): Named | undefined {
  const name = textOf(node);
  return name === undefined || node === undefined ? undefined : { name, span: node.span };
}

const namedAt = (node: Node, key: string): Named | undefined => namedOf(childOf(node, key));
