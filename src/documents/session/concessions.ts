import type { Place } from '../../diagnostic/place.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { type Amount, type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import { checkPosition } from '../engine/checkPosition.ts';
import { type Measure, type Measures, readMeasure } from '../measure.ts';
import { childOf, itemsOf, textAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** A deviation that somebody accepted, up to a stated value and with a reason. */
export interface Concession {
  readonly measure: Measure;
  readonly positions: readonly Position[];
  readonly upTo: Amount | undefined;
  readonly downTo: Amount | undefined;
  readonly reason: string;
  /** Who decided it, and who agreed. */
  readonly by: string | undefined;
  readonly agreed: string | undefined;
  /** The last day on which later sessions are covered as well. */
  readonly until: string | undefined;
  readonly followUps: readonly FollowUp[];
  readonly place: Place;
}

/** What a later session must measure, and where it must then lie. */
export interface FollowUp {
  readonly measure: Measure;
  readonly position: Position;
  readonly min: Amount | undefined;
  readonly max: Amount | undefined;
  readonly place: Place;
}

interface ConcessionContext {
  readonly measures: Measures;
  readonly layout: Layout;
}

export const readConcessions = (
  root: Node,
  around: ConcessionContext,
  context: DocumentContext,
): readonly Concession[] =>
  itemsOf(childOf(root, 'concessions')).flatMap((item) => {
    reportOver(childOf(item, 'until'), textAt(root, 'date'), context);
    return readConcession(item, around, context) ?? [];
  });

/** It would cover nothing but its own session, and say that it covers later ones. */
function reportOver(until: Node | undefined, date: string | undefined, context: DocumentContext): void {
  const day = textOf(until);
  if (until === undefined || day === undefined || date === undefined || day >= date) return;
  const message = `it ends on ${day}, before its own session of ${date}`;
  report(
    context,
    'value',
    until.span,
    message,
    'correct the day, or leave `until` out for this session alone',
  );
}

function readConcession(
  item: Node,
  around: ConcessionContext,
  context: DocumentContext,
): Concession | undefined {
  const measure = readMeasure(childOf(item, 'measure'), around.measures, context);
  if (measure === undefined) return undefined;
  return {
    measure,
    positions: readPositions(item, measure, around.layout, context),
    upTo: readAmount(childOf(item, 'up_to'), measure.quantity, context),
    downTo: readAmount(childOf(item, 'down_to'), measure.quantity, context),
    reason: textAt(item, 'reason') ?? '',
    by: textAt(item, 'by'),
    agreed: textAt(item, 'agreed'),
    until: readDate(childOf(item, 'until'), context),
    followUps: readFollowUps(childOf(item, 'follow_up'), around, context),
    place: context.source.place((childOf(item, 'measure') ?? item).span),
  };
}

/** One position or a list of them; what is measured once an engine has but one. */
function readPositions(
  item: Node,
  measure: Measure,
  layout: Layout,
  context: DocumentContext,
): readonly Position[] {
  const at = childOf(item, 'at');
  const only = layout.only(measure.family);
  if (at === undefined && only !== undefined) return [only];
  if (at === undefined) {
    const message = `${measure.id} needs a ${measure.family.name} position`;
    report(context, 'missing-key', item.span, message, 'write at: and the position, or a list of them');
    return [];
  }
  return (at.kind === 'list' ? at.items : [at]).flatMap((node) => {
    const key = textOf(node);
    // What is no name at all was told when the document was read.
    if (key === undefined) return [];
    return checkPosition({ key, keySpan: node.span }, layout, measure.family, context) ?? [];
  });
}

/** One for each position that is named. */
function readFollowUps(
  node: Node | undefined,
  around: ConcessionContext,
  context: DocumentContext,
): readonly FollowUp[] {
  const measure = readMeasure(childOf(node, 'measure'), around.measures, context);
  if (node === undefined || measure === undefined) return [];
  const min = readAmount(childOf(node, 'min'), measure.quantity, context);
  const max = readAmount(childOf(node, 'max'), measure.quantity, context);
  const place = context.source.place(node.span);
  const positions = readPositions(node, measure, around.layout, context);
  return positions.map((position) => ({ measure, position, min, max, place }));
}
