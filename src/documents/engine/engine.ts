import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Expansion } from '../../measurement/expansion.ts';
import { type Amount, type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import type { SizeStatement } from '../grades/statements.ts';
import type { Measures } from '../measure.ts';
import { type HandedOver, readHandedOver } from '../planning/handedOver.ts';
import { type PartChange, readPartChanges } from '../session/partChanges.ts';
import { childOf, entriesOf, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { isPlainSize, PLAIN_SIZE_NAMES } from './plainSizes.ts';
import { type RunningDuty, readRunningDuty } from './running/duty.ts';
import { readExpansions } from './running/expansions.ts';
import { type RunningHeat, readRunningHeat } from './running/heat.ts';
import { type Oil, readOil } from './running/oil.ts';
import { type DecisionRule, readDecisionRule } from './shop.ts';
import { readStamps, type Stamps } from './stamps.ts';

export interface EngineDocument {
  readonly name: string;
  readonly layout: Layout;
  /** Nominal sizes by name, such as `bore`. */
  readonly sizes: ReadonlyMap<string, Amount>;
  /** Of each part whose material or expansion is stated; undefined for a material that is not known. */
  readonly expansions: ReadonlyMap<string, Expansion | undefined>;
  /** How warm its parts are when it runs, where that is stated. */
  readonly running: RunningHeat | undefined;
  /** What its bearings have to do when it runs, as far as that is stated. */
  readonly duty: RunningDuty;
  readonly oil: Oil | undefined;
  readonly decisionRule: DecisionRule | undefined;
  /** The sizes of the parts that it came with. */
  readonly fitted: readonly SizeStatement[];
  readonly partChanges: readonly PartChange[];
  readonly job: JobPapers;
  readonly stamps: Stamps;
  readonly handedOver: HandedOver;
}

/** The shop's own papers, as far as they are printed. */
export interface JobPapers {
  readonly number: string | undefined;
  readonly customer: string | undefined;
  readonly serial: string | undefined;
  /** The day on which it left. */
  readonly delivered: string | undefined;
}

export function readEngine(
  root: Node,
  layout: Layout,
  measures: Measures,
  context: DocumentContext,
): EngineDocument {
  const known = { parts: measures.parts, layout };
  const partChanges = readPartChanges(root, known, context);
  return {
    name: textAt(root, 'name') ?? context.source.path,
    layout,
    sizes: readSizes(childOf(root, 'sizes'), measures, context),
    expansions: readExpansions(root, context),
    running: readRunningHeat(root, context),
    duty: readRunningDuty(root, context),
    oil: readOil(root, context),
    decisionRule: readDecisionRule(root),
    fitted: partChanges.flatMap(({ sizes }) => sizes),
    partChanges,
    job: readJob(childOf(root, 'job'), context),
    stamps: readStamps(root, known, context),
    handedOver: readHandedOver(root, known, context),
  };
}

const readJob = (node: Node | undefined, context: DocumentContext): JobPapers => ({
  number: textAt(node, 'number'),
  customer: textAt(node, 'customer'),
  serial: textAt(node, 'engine_serial'),
  delivered: readDate(childOf(node, 'delivered'), context),
});

function readSizes(
  node: Node | undefined,
  measures: Measures,
  context: DocumentContext,
): ReadonlyMap<string, Amount> {
  const sizes = new Map<string, Amount>();
  for (const { key, keySpan, node: value } of entriesOf(node)) {
    const known = isPlainSize(key) || measures.find(key)?.quantity === 'length';
    if (!known) {
      const help = didYouMean(key, [...PLAIN_SIZE_NAMES, ...measures.ids()]);
      report(
        context,
        'unknown-measure',
        keySpan,
        `${key} is not a size: bore, stroke, the length of a bearing, or a length that is measured`,
        help,
      );
      continue;
    }
    const amount = readAmount(value, 'length', context);
    if (amount !== undefined) sizes.set(key, amount);
  }
  return sizes;
}
