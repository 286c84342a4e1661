import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { TighteningSituation } from '../../torque/cautions.ts';
import { type Strength, strengthOf } from '../../torque/fasteners/grades.ts';
import type { Section } from '../../torque/fasteners/stretch.ts';
import type { Thread } from '../../torque/fasteners/threadForm.ts';
import { parseThread } from '../../torque/fasteners/threads.ts';
import { MOST_FASTENERS } from '../../torque/order/layouts.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textAt, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** The bolts, studs or nuts of a joint. */
export interface Fasteners {
  /** Undefined where only the positions name them. */
  readonly names: readonly string[] | undefined;
  readonly groups: ReadonlyMap<string, readonly string[]>;
  readonly thread: Thread | undefined;
  readonly grade: string | undefined;
  readonly strength: Strength | undefined;
  readonly lacking: readonly string[];
  readonly reuse: TighteningSituation['reuse'];
  readonly sections: readonly Section[];
}

const METRES_IN_A_LENGTH_STEP = 1e-10;
const PASCALS_IN_A_KILOPASCAL = 1000;

export function readFasteners(
  node: Node | undefined,
  context: DocumentContext,
  see: (unit: Unit) => void,
): Fasteners {
  const thread = readThread(childOf(node, 'thread'), context);
  const { strength, lacking } = readStrength(node, thread, context);
  const reuse = scalarOf(childOf(node, 'reuse'))?.value;
  return {
    names: readNames(node, context),
    groups: new Map(
      entriesOf(childOf(node, 'groups')).map(({ key, node: names }) => [key, [...new Set(textsOf(names))]]),
    ),
    thread,
    grade: textAt(node, 'grade'),
    strength,
    lacking: thread === undefined ? ['the thread is not stated'] : lacking,
    reuse: typeof reuse === 'boolean' ? (reuse ? 'allowed' : 'once') : 'unstated',
    sections: readSections(node, thread, context, see),
  };
}

function readNames(node: Node | undefined, context: DocumentContext): readonly string[] | undefined {
  const [names, count] = [childOf(node, 'names'), scalarOf(childOf(node, 'count'))?.value];
  if (names !== undefined && itemsOf(names).length > MOST_FASTENERS) {
    const message = `${itemsOf(names).length} fasteners are more than ${MOST_FASTENERS}`;
    return report(context, 'value', names.span, message, 'a joint has fewer');
  }
  if (names !== undefined) return itemsOf(names).flatMap((item) => textOf(item) ?? []);
  if (typeof count !== 'number') return undefined;
  return Array.from({ length: Math.min(count, MOST_FASTENERS) }, (_, index) => String(index + 1));
}

function readThread(node: Node | undefined, context: DocumentContext): Thread | undefined {
  const text = textOf(node);
  if (node === undefined || text === undefined) return undefined;
  const parsed = parseThread(text);
  return 'thread' in parsed
    ? parsed.thread
    : report(context, 'value', node.span, parsed.problem, parsed.help);
}

interface FoundStrength {
  readonly strength: Strength | undefined;
  readonly lacking: readonly string[];
}

/** The fastener maker's own figures before those of a standard. */
function readStrength(
  node: Node | undefined,
  thread: Thread | undefined,
  context: DocumentContext,
): FoundStrength {
  const pascals = (key: string): number | undefined => {
    const amount = readAmount(childOf(node, key), 'pressure', context)?.amount;
    return amount === undefined ? undefined : toNumber(amount) * PASCALS_IN_A_KILOPASCAL;
  };
  const [proofPa, yieldPa, grade] = [pascals('proof'), pascals('yield'), textAt(node, 'grade')];
  if (proofPa !== undefined) {
    // What is not stated is taken as low as it can be.
    const upTo = yieldPa ?? proofPa;
    const own = { grade: grade ?? 'proof strength as stated', proofPa, yieldPa: upTo };
    return { strength: { ...own, source: 'stated in the document' }, lacking: [] };
  }
  if (grade === undefined) return { strength: undefined, lacking: ['the grade is not stated'] };
  if (thread === undefined) return { strength: undefined, lacking: [] };
  const found = strengthOf(grade, thread);
  return 'strength' in found
    ? { strength: found.strength, lacking: [] }
    : { strength: undefined, lacking: [found.problem] };
}

/** `sections`, or one section of `length` at the stress area; none without a thread. */
function readSections(
  node: Node | undefined,
  thread: Thread | undefined,
  context: DocumentContext,
  see: (unit: Unit) => void,
): readonly Section[] {
  const metres = (of: Node | undefined): number | undefined => {
    const read = readAmount(of, 'length', context);
    if (read === undefined) return undefined;
    see(read.unit);
    if (read.amount.n > 0n) return toNumber(read.amount) * METRES_IN_A_LENGTH_STEP;
    return report(
      context,
      'value',
      read.span,
      `a length of ${read.written} cannot stretch`,
      'write a length above 0',
    );
  };
  const stated = itemsOf(childOf(node, 'sections'));
  const parts = stated.length > 0 ? stated : childOf(node, 'length') === undefined ? [] : [node];
  return parts.flatMap((part): readonly Section[] => {
    const [lengthM, diameterM] = [metres(childOf(part, 'length')), metres(childOf(part, 'diameter'))];
    const areaM2 = diameterM === undefined ? thread?.stressAreaM2 : (Math.PI / 4) * diameterM ** 2;
    return lengthM === undefined || areaM2 === undefined ? [] : [{ lengthM, areaM2 }];
  });
}

/** A percentage written `25 %` as a share. */
export function readPercentAt(node: Node | undefined, key: string): number | undefined {
  const percent = /^(\d+(?:\.\d+)?|\.\d+) ?%$/.exec(textAt(node, key) ?? '')?.[1];
  return percent === undefined ? undefined : Number(percent) / 100;
}
