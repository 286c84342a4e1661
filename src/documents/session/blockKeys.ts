import type { Layout } from '../../layout/layout.ts';
import { whereMeasured } from '../../layout/naming.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Measure } from '../measure.ts';
import { childOf, entriesOf, itemsOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { POINT_KEYS } from './points.ts';
import { readingForm } from './readingForm.ts';

/** Keys of a block that would be passed over beside others: what somebody wrote there must not be lost. */
export function reportUnreadKeys(
  block: Node,
  measure: Measure,
  layout: Layout,
  context: DocumentContext,
): void {
  const { id, family } = measure;
  const unread = (key: string, message: string, help: string): void => {
    const entry = entryOf(block, key);
    if (entry !== undefined) report(context, 'value', entry.keySpan, message, help);
  };
  if (!family.isNamedBySession) {
    const message = `${id} is measured ${whereMeasured(family)}, and not after steps`;
    unread('after', message, readingForm(family));
  }
  if (layout.only(family) !== undefined && childOf(block, 'value') !== undefined) {
    unread(
      'at',
      'at: is not read beside value:',
      'keep one of the two; a second reading is a block of its own',
    );
  }
  if (childOf(block, 'set_to') !== undefined) {
    const help =
      'keep set_to: for a master, whose error counts, or base: for arithmetic alone; one that is both goes into set_to:';
    unread('base', 'base: is not read beside set_to:', help);
  }
  for (const node of [childOf(block, 'value'), ...entriesOf(childOf(block, 'at')).map((each) => each.node)])
    reportUnreadPoints(node, context);
  for (const step of itemsOf(childOf(block, 'after'))) {
    if (childOf(step, 'running') === undefined) continue;
    const both = entryOf(step, 'value');
    if (both === undefined) continue;
    report(
      context,
      'value',
      both.keySpan,
      'value: is not read beside running:',
      'keep running: alone; it is judged',
    );
  }
}

/** Ways of giving one point, the one that is read first. */
const WAYS = ['repeat', 'go', 'value'] as const;

/** A map that gives one point in two ways, or a point beside its halves or ends; the loader has bounded the depth. */
function reportUnreadPoints(node: Node | undefined, context: DocumentContext): void {
  if (node === undefined || node.kind === 'scalar') return;
  const part = entriesOf(node).find(({ key }) => !POINT_KEYS.has(key))?.key;
  const ways = WAYS.filter((way) => childOf(node, way) !== undefined);
  const [read, ...others] = part === undefined ? ways : [part, ...ways];
  for (const other of others) {
    const entry = entryOf(node, other);
    const help = `keep ${read}: or ${other}:; a second measurement is a block of its own`;
    if (entry !== undefined)
      report(context, 'value', entry.keySpan, `${other}: is not read beside ${read}:`, help);
  }
  const children = node.kind === 'list' ? node.items : entriesOf(node).map((entry) => entry.node);
  for (const child of children) reportUnreadPoints(child, context);
}

const entryOf = (node: Node, key: string): Entry | undefined =>
  node.kind === 'map' ? node.entries.get(key) : undefined;
