import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import type { Measure, Measures } from '../measure.ts';
import { childOf, entriesOf, textAt, textOf } from '../yaml/access.ts';
import type { Entry, Node, Span } from '../yaml/node.ts';
import type { Bands } from './bands.ts';
import { lastBand, readBands } from './entryBands.ts';
import { type GradeRow, readGradeRows } from './gradeRows.ts';

/** What a document says of one characteristic, in general or at one position. */
export interface LimitEntry {
  readonly bands: Bands;
  /** As the maker prints them for under and oversize parts. */
  readonly sizes: readonly GradeRow[];
  /** A taper's limit may be for a length of the part instead of for all of it. */
  readonly per: Fraction | undefined;
  /** A taper from end to end, or as the range of all stations. */
  readonly by: 'ends' | 'range' | undefined;
  readonly source: string | undefined;
  readonly note: string | undefined;
}

export interface MeasureLimits {
  readonly general: LimitEntry;
  /** By the key as written; the engine decides which of its positions that names. */
  readonly at: ReadonlyMap<string, LimitEntry>;
  /** Where the keys stand, to report those that name nothing. */
  readonly keys: readonly Pick<Entry, 'key' | 'keySpan'>[];
}

export interface LimitsDocument {
  readonly path: string;
  /** It stands in the engine's own folder; another serves other engines as well. */
  readonly isOwn: boolean;
  readonly source: string | undefined;
  /** The day from which they hold, where another edition held before. */
  readonly from: string | undefined;
  readonly extends: { readonly path: string; readonly span: Span } | undefined;
  readonly limits: ReadonlyMap<string, MeasureLimits>;
}

export function readLimits(
  root: Node,
  measures: Measures,
  context: DocumentContext,
  isOwn: boolean,
): LimitsDocument {
  const limits = new Map<string, MeasureLimits>();
  for (const entry of entriesOf(childOf(root, 'limits'))) {
    const measure = measures.find(entry.key);
    if (measure === undefined) {
      const help = didYouMean(entry.key, measures.ids());
      report(context, 'unknown-measure', entry.keySpan, `nothing is known as ${entry.key}`, help);
    } else if (measure.quantity === 'pass or fail') {
      const message = `${measure.id} is passed or failed`;
      report(context, 'value', entry.keySpan, message, 'take it out: a test has no limits');
    } else limits.set(measure.id, readMeasureLimits(entry.node, measure, measures, context));
  }
  const path = childOf(root, 'extends');
  return {
    path: context.source.path,
    isOwn,
    source: textAt(root, 'source'),
    from: readDate(childOf(root, 'from'), context),
    extends: path === undefined ? undefined : { path: textOf(path) ?? '', span: path.span },
    limits,
  };
}

function readMeasureLimits(
  node: Node,
  measure: Measure,
  measures: Measures,
  context: DocumentContext,
): MeasureLimits {
  reportNoTaper(node, measure, measures, context);
  const positions = entriesOf(childOf(node, 'at'));
  const entryOf = (each: Node): LimitEntry => readEntry(each, measure, measures, context);
  return {
    general: entryOf(node),
    at: new Map(positions.map(({ key, node: each }) => [key, entryOf(each)])),
    keys: positions,
  };
}

function readEntry(node: Node, measure: Measure, measures: Measures, context: DocumentContext): LimitEntry {
  const by = textAt(node, 'by');
  return {
    bands: { ...readBands(node, measure, measures, context), ...lastBand(node, measure, context) },
    sizes: readGradeRows(childOf(node, 'sizes'), measure, measures, context),
    per: readAmount(childOf(node, 'per'), 'length', context)?.amount,
    by: by === 'ends' || by === 'range' ? by : undefined,
    source: textAt(node, 'source'),
    note: textAt(node, 'note'),
  };
}

/** What says how a taper is taken would be passed over anywhere else. */
function reportNoTaper(node: Node, measure: Measure, measures: Measures, context: DocumentContext): void {
  if (measure.figure === 'taper') return;
  const tapers = measures.ids().filter((id) => measures.find(id)?.figure === 'taper');
  for (const { key, keySpan } of entriesOf(node)) {
    if (key !== 'per' && key !== 'by') continue;
    const message = `\`${key}\` says how a taper is taken, and ${measure.id} is none`;
    report(context, 'value', keySpan, message, `those that take it: ${tapers.join(', ')}`);
  }
}
