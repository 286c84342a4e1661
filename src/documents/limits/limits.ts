import type { Place } from '../../diagnostic/place.ts';
import type { StatedTemperature } from '../../measurement/temperature.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import { type Measure, type Measures, unknownMeasure } from '../measure.ts';
import { unstatedSource } from '../unstatedSource.ts';
import { childOf, entriesOf, textAt, textOf } from '../yaml/access.ts';
import type { Entry, Node, Span } from '../yaml/node.ts';
import { type Choices, readChoices } from './choices.ts';
import { lastBand, readBands } from './entryBands.ts';
import { readGradeRows } from './gradeRows.ts';
import type { LimitEntry, MeasureLimits } from './limitEntry.ts';
import { readTemperature, reportNoLength } from './limitTemperature.ts';
import { placedEntries } from './placedEntries.ts';
import { readUsualParts } from './usualParts.ts';

export interface LimitsDocument {
  readonly path: string;
  /** It stands in the engine's own folder; another serves other engines as well. */
  readonly isOwn: boolean;
  readonly source: string | undefined;
  /** Where it leaves its source open. */
  readonly unstatedSource: Place | undefined;
  /** The temperature at which its figures hold, where an entry says no other. */
  readonly temperature: StatedTemperature | undefined;
  /** The day from which they hold, where another edition held before. */
  readonly from: string | undefined;
  readonly extends: { readonly path: string; readonly span: Span } | undefined;
  readonly limits: ReadonlyMap<string, MeasureLimits>;
  /** How its maker has parts chosen. */
  readonly choices: Choices;
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
      const { message, help } = unknownMeasure(entry.key, measures);
      report(context, 'unknown-measure', entry.keySpan, message, help);
    } else if (measure.quantity === 'pass or fail') {
      const message = `${measure.id} is a test: it is passed or failed`;
      report(context, 'value', entry.keySpan, message, 'take it out: a test has no limits');
    } else limits.set(measure.id, readMeasureLimits(entry, measure, measures, context));
  }
  const path = childOf(root, 'extends');
  return {
    path: context.source.path,
    isOwn,
    source: textAt(root, 'source'),
    unstatedSource: unstatedSource(root, context),
    temperature: readTemperature(root, context),
    from: readDate(childOf(root, 'from'), context),
    extends: path === undefined ? undefined : { path: textOf(path) ?? '', span: path.span },
    limits,
    choices: readChoices(root, measures.parts, context),
  };
}

function readMeasureLimits(
  key: Entry,
  measure: Measure,
  measures: Measures,
  context: DocumentContext,
): MeasureLimits {
  const { node } = key;
  const entryOf = (each: Node): LimitEntry => readEntry(each, measure, measures, context);
  return {
    general: entryOf(node),
    at: placedEntries(node, measure, entryOf, context),
    key,
  };
}

function readEntry(node: Node, measure: Measure, measures: Measures, context: DocumentContext): LimitEntry {
  reportNoTaper(node, measure, measures, context);
  const by = textAt(node, 'by');
  reportNoLength(node, measure, context);
  return {
    bands: { ...readBands(node, measure, measures, context), ...lastBand(node, measure, context) },
    sizes: readGradeRows(childOf(node, 'sizes'), measure, measures, context),
    per: readAmount(childOf(node, 'per'), 'length', context)?.amount,
    by: by === 'ends' || by === 'range' ? by : undefined,
    temperature: readTemperature(node, context),
    usual: readUsualParts(node, measure, context),
    source: textAt(node, 'source'),
    note: textAt(node, 'note'),
  };
}

/** What says how a taper is taken would be passed over anywhere else. */
function reportNoTaper(node: Node, measure: Measure, measures: Measures, context: DocumentContext): void {
  for (const { key, keySpan } of entriesOf(node)) {
    if ((key !== 'per' && key !== 'by') || takes(key, measure)) continue;
    const those = measures.ids().filter((id) => takes(key, measures.find(id)));
    const message = `\`${key}\` says how a taper is taken, and ${measure.id} is not a taper`;
    report(context, 'value', keySpan, message, `those that take it: ${those.join(', ')}`);
  }
}

const takes = (key: 'per' | 'by', measure: Measure | undefined): boolean =>
  measure?.figure === 'taper' || (key === 'per' && measure?.isInLength === true);
