import type { Place } from '../../diagnostic/place.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { type Quantity, type Unit, unitNamed } from '../../quantity/units.ts';
import type { Friction } from '../../torque/fasteners/friction.ts';
import {
  type Lubrication,
  lubricationNamed,
  statedNutFactor,
  UNSTATED,
} from '../../torque/fasteners/lubrication.ts';
import type { Joint } from '../../torque/joint.ts';
import { MOST_FASTENERS } from '../../torque/order/layouts.ts';
import { planSequence } from '../../torque/plan.ts';
import type { Pass, Sequence } from '../../torque/sequence.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readWindow } from '../limits/window.ts';
import { stemOf } from '../stem.ts';
import { unstatedSource } from '../unstatedSource.ts';
import { childOf, flagAt, itemsOf, scalarOf, textAt, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { placesFromNames, readPlaces } from './fastenerPlaces.ts';
import { readFasteners, readPercentAt } from './fasteners.ts';
import { readActions, type UnitsWritten } from './passes.ts';
import { readOrder } from './torqueOrder.ts';
import { reportSequenceProblems } from './torqueProblems.ts';
import { readAdapter } from './wrench.ts';

/** How one joint is tightened, as its document says. */
export interface TorqueDocument {
  /** The file's name without its ending. */
  readonly name: string;
  readonly path: string;
  readonly joint: Joint;
  readonly start: Place;
  /** Where it leaves its source open. */
  readonly unstatedSource: Place | undefined;
  /** Where each pass is written, in the order of the sequence's passes. */
  readonly passPlaces: readonly Place[];
}

const MOST_PASSES = 50;
const METRES_IN_A_LENGTH_STEP = 1e-10;

/** A torque document; problems are reported, and the joint then is not to be used. */
export function readTorque(root: Node, context: DocumentContext): TorqueDocument {
  const units = new Map<Quantity, Unit>();
  const written: UnitsWritten = {
    see: (quantity, unit) => {
      if (!units.has(quantity)) units.set(quantity, unit);
    },
  };
  const passes = readPasses(root, context, written);
  const fasteners = readFasteners(childOf(root, 'fasteners'), context, (unit) => written.see('length', unit));
  const { sequence, ...arranged } = readSequence(root, fasteners.names, fasteners.groups, passes, context);
  const plan = planSequence(sequence);
  if ('problems' in plan && sequence.fasteners.length > 0)
    reportSequenceProblems(
      plan.problems,
      root,
      passes.map(({ item }) => item),
      context,
    );
  const { thread, grade, strength, lacking, reuse, sections } = fasteners;
  const joint: Joint = {
    sequence,
    ...arranged,
    steps: 'steps' in plan ? plan.steps : [],
    reuse,
    lubricant: textAt(root, 'lubricant'),
    lubrication: readLubrication(root),
    friction: readFriction(childOf(root, 'friction'), context),
    thread,
    grade,
    strength,
    lacking,
    sections,
    ...readAdapter(root, context),
    runOn: readAmount(childOf(root, 'run_on'), 'torque', context)?.amount,
    torqueUnit: units.get('torque') ?? context.units.get('torque') ?? unitNamed('N m'),
    lengthUnit: units.get('length') ?? context.units.get('length') ?? unitNamed('mm'),
    source: textAt(root, 'source') ?? '',
    note: textAt(root, 'note'),
  };
  return {
    name: stemOf(context.source.path),
    path: context.source.path,
    joint,
    unstatedSource: unstatedSource(root, context),
    start: context.source.place((childOf(root, 'joint') ?? root).span),
    passPlaces: passes.map(({ item }) => context.source.place(item.span)),
  };
}

interface ReadPass {
  readonly pass: Pass;
  readonly item: Node;
}

function readPasses(root: Node, context: DocumentContext, written: UnitsWritten): readonly ReadPass[] {
  const items = itemsOf(childOf(root, 'passes'));
  const tooMany = items[MOST_PASSES];
  if (tooMany !== undefined) {
    report(context, 'value', tooMany.span, `${items.length} passes are more than ${MOST_PASSES}`);
  }
  return items.slice(0, MOST_PASSES).flatMap((item) => {
    const fasteners = childOf(item, 'fasteners');
    const note = textAt(item, 'note');
    return readActions(item, context, written).map((action) => ({
      item,
      pass: {
        action,
        ...(fasteners === undefined ? {} : { fasteners: [...new Set(textsOf(fasteners))] }),
        ...(flagAt(item, 'reversed') ? { reversed: true } : {}),
        ...(note === undefined ? {} : { note }),
      },
    }));
  });
}

function readSequence(
  root: Node,
  named: readonly string[] | undefined,
  groups: Sequence['groups'],
  passes: readonly ReadPass[],
  context: DocumentContext,
): { readonly sequence: Sequence } & Pick<Joint, 'orderFrom' | 'places'> {
  const positions = childOf(root, 'positions');
  const read = positions && readPlaces(positions, named, context);
  const known = new Set(named);
  const stray = named && read?.positions.find(({ name }) => !known.has(name));
  if (positions !== undefined && stray !== undefined) {
    report(
      context,
      'unknown-position',
      positions.span,
      `${stray.name} in positions is not a fastener of this joint`,
    );
  }
  const fasteners = named ?? read?.positions.map(({ name }) => name) ?? [];
  reportCount(fasteners, root, context);
  // What was reported of the places is no reason to complain of an order that needs them.
  const written =
    positions !== undefined && read === undefined ? { kind: 'row' as const, positions: [] } : read;
  const { order, from } = readOrder(childOf(root, 'order'), fasteners, written, context);
  const final = readWindow(childOf(root, 'final'), 'torque', context);
  const sequence: Sequence = {
    joint: textAt(root, 'joint') ?? '',
    fasteners,
    groups,
    order: positions !== undefined && read === undefined && from === 'generated' ? fasteners : order,
    generated: from === 'generated',
    ...(final === undefined ? {} : { final: { least: final.least, greatest: final.greatest } }),
    passes: passes.map(({ pass }) => pass),
    before: textsOf(childOf(root, 'before')),
    after: textsOf(childOf(root, 'after')),
  };
  return { sequence, orderFrom: from, places: read ?? placesFromNames(fasteners) };
}

function reportCount(fasteners: readonly string[], root: Node, context: DocumentContext): void {
  const place = childOf(root, 'fasteners') ?? root;
  if (fasteners.length === 0) {
    const help = 'write `fasteners: { names: [1L, 1R] }`, `fasteners: { count: 10 }`, or `positions:`';
    report(context, 'missing-key', place.span, 'the fasteners of the joint are not stated', help);
  } else if (fasteners.length > MOST_FASTENERS) {
    report(context, 'value', place.span, `${fasteners.length} fasteners are more than ${MOST_FASTENERS}`);
  }
}

function readLubrication(root: Node): Lubrication {
  const factor = scalarOf(childOf(root, 'nut_factor'))?.value;
  const scatter = readPercentAt(root, 'scatter');
  const lubricant = textAt(root, 'lubricant');
  const named = lubricant === undefined ? UNSTATED : lubricationNamed(lubricant);
  const stated = typeof factor === 'number' && factor > 0 ? statedNutFactor(factor, named) : named;
  return scatter === undefined ? stated : { ...stated, scatter };
}

function readFriction(node: Node | undefined, context: DocumentContext): Friction | undefined {
  const number = (key: string): number | undefined => {
    const value = scalarOf(childOf(node, key))?.value;
    return typeof value === 'number' && value > 0 ? value : undefined;
  };
  const [thread, head] = [number('thread'), number('head')];
  const diameter: Fraction | undefined = readAmount(
    childOf(node, 'head_diameter'),
    'length',
    context,
  )?.amount;
  if (thread === undefined || head === undefined || diameter === undefined) return undefined;
  const headDiameterM = (Number(diameter.n) / Number(diameter.d)) * METRES_IN_A_LENGTH_STEP;
  return { thread, head, headDiameterM };
}
