import type { Engine } from '../../documents/assemble.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import { adapterAt, angleOf } from '../../documents/tightening/wrench.ts';
import { TORQUE_FORMATS } from '../../output/torque/formats/index.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import type { World } from '../../shell/world.ts';
import { type Tools, tighteningCard } from '../../torque/card.ts';
import { amountOption } from '../amountOption.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';

export interface TorqueOptions {
  readonly format: readonly FormatChoice[];
  readonly wrench?: string;
  readonly adapter?: string;
  readonly adapterAngle?: string;
  readonly runOn?: string;
  readonly at?: string;
}

/** Prints the tightening card of a joint; 1 where a written torque is beyond proof, 2 where a document is wrong. */
export async function torque(
  name: string,
  engineName: string | undefined,
  options: TorqueOptions,
  world: World,
): Promise<number> {
  const { engine, revision, hasProblems } = openEngine(engineName, world, options.at);
  const document = sequenceNamed(name, engine);
  const carded = tighteningCard(document.joint, toolsOf(options, engine, document));
  if ('problem' in carded) {
    throw new UsageError(
      carded.problem,
      'check --wrench and --adapter: lengths from hand to drive, and from drive to fastener',
    );
  }
  const { card } = carded;
  const origin = { engine: engine.document.name, path: document.path, revision };
  const exit = hasProblems ? 2 : card.beyondProof ? 1 : 0;
  await printFormats(TORQUE_FORMATS, options.format, { card, origin, exit }, world);
  return exit;
}

/** A file's name, a unique part of one, or the joint's name, in that order. */
function sequenceNamed(name: string, { sequences, document }: Engine): TorqueDocument {
  const tries = [
    sequences.filter((each) => each.name === name || each.path === name.replace(/^\.\//, '')),
    sequences.filter(({ joint }) => joint.sequence.joint === name),
    sequences.filter((each) => each.name.includes(name)),
    sequences.filter(({ joint }) => joint.sequence.joint.includes(name)),
  ];
  const found = tries.find((each) => each.length > 0) ?? [];
  const [first] = found;
  const listed = (of: readonly TorqueDocument[]): string => of.map((each) => each.name).join(', ');
  if (found.length > 1) {
    throw new UsageError(
      `${name} may be any of several sequences: ${listed(found)}`,
      'write more of the name',
    );
  }
  if (first !== undefined) return first;
  const help = sequences.length === 0 ? 'write one with kind: torque' : `it has ${listed(sequences)}`;
  throw new UsageError(`${document.name} has no valid torque document ${name}`, help);
}

function toolsOf(options: TorqueOptions, { units }: Engine, { joint }: TorqueDocument): Tools {
  const length = (name: string, text: string | undefined): Fraction | undefined =>
    amountOption(name, text, 'length', units.get('length'));
  const angle = amountOption('--adapter-angle', options.adapterAngle, 'angle', undefined);
  const adapter = length('--adapter', options.adapter);
  // The document's adapter is held at its angle, whatever its length.
  const written = joint.adapter === undefined ? undefined : angleOf(joint.adapter);
  if (adapter === undefined && angle !== undefined) {
    throw new UsageError('--adapter-angle needs --adapter', 'give --adapter LENGTH as well');
  }
  return {
    wrenchLength: length('--wrench', options.wrench),
    adapter: adapter && adapterAt(adapter, angle ?? written),
    runOn: amountOption('--run-on', options.runOn, 'torque', joint.torqueUnit),
  };
}
