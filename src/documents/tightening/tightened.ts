import { didYouMean } from '../../diagnostic/suggestion.ts';
import { type DocumentContext, report } from '../amount.ts';
import { readDate } from '../date.ts';
import type { Named } from '../yaml/access.ts';
import { childOf, itemsOf, textOf, textsOf } from '../yaml/access.ts';
import type { Node, Span } from '../yaml/node.ts';
import { checkNames, type LoggedPass, readLoggedPass } from './loggedPass.ts';
import type { TorqueDocument } from './torque.ts';

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
  const date = readDate(childOf(item, 'date'), context);
  if (document === undefined || node === undefined) return undefined;
  const passes = childOf(item, 'passes');
  const order = childOf(item, 'order');
  const fasteners = textOf(childOf(item, 'fasteners'));
  checkNames(itemsOf(order), document, context, false);
  return {
    document,
    date,
    with: namedAt(item, 'with'),
    lubricant: namedAt(item, 'lubricant'),
    fasteners: fasteners === 'new' || fasteners === 'reused' ? fasteners : undefined,
    confirmed: textOf(childOf(item, 'confirmed')) === 'all' ? 'all' : textsOf(childOf(item, 'confirmed')),
    order: order === undefined ? undefined : itemsOf(order).flatMap((each) => namedOf(each) ?? []),
    passes: passes && itemsOf(passes).flatMap((pass) => readLoggedPass(pass, document, context)),
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

function namedOf(node: Node | undefined): Named | undefined {
  const name = textOf(node);
  return name === undefined || node === undefined ? undefined : { name, span: node.span };
}

const namedAt = (node: Node, key: string): Named | undefined => namedOf(childOf(node, key));
