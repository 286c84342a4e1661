import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import type { Finding } from '../finding.ts';
import { MISSING } from '../findings/readings.ts';
import { UNMEASURED } from '../judge/session.ts';
import { type ClampedAnew, clampedAnew, jointPartsOf } from './clamping.ts';

/** A reading that ended because its joint was tightened in another way. */
interface EndedReading {
  readonly characteristic: Characteristic;
  readonly position: Position;
  readonly read: SessionDocument;
  readonly anew: ClampedAnew;
}

interface Known {
  readonly engine: Engine;
  readonly registry: Registry;
}

/** What is missing since its joint was tightened in another way says so, at the tightening, with what to do. */
export function withClamping(
  findings: readonly Finding[],
  run: readonly SessionDocument[],
  known: Known,
): readonly Finding[] {
  const ended = endedReadings(run, known);
  if (ended.length === 0) return findings;
  return findings.map((each) => {
    if (each.code !== MISSING.code && each.code !== UNMEASURED.code) return each;
    const of = each.measure === undefined ? undefined : known.registry.find(each.measure);
    const reading = of && ended.find((one) => isBehind(one, of, each.at, known));
    return of === undefined || reading === undefined ? each : explained(each, of, reading, known);
  });
}

function endedReadings(run: readonly SessionDocument[], known: Known): readonly EndedReading[] {
  if (run.every(({ tightened }) => tightened.length === 0)) return [];
  const clamping = { ...known, jointParts: jointPartsOf(run, known) };
  const seen = new Map<Characteristic, Set<Position>>();
  return run.toReversed().flatMap((read) =>
    read.blocks.flatMap(({ measure, positions }) => {
      const characteristic = known.registry.find(measure.id);
      if (characteristic === undefined) return [];
      const latest = seen.get(characteristic) ?? new Set();
      seen.set(characteristic, latest);
      return positions.flatMap(({ position }) => {
        if (latest.has(position)) return [];
        latest.add(position);
        const anew = clampedAnew(characteristic, position, read, run, clamping);
        return anew === undefined ? [] : [{ characteristic, position, read, anew }];
      });
    }),
  );
}

/** It is the reading that is missing, or one that this is worked out from. */
const isBehind = (
  { characteristic, position }: EndedReading,
  of: Characteristic,
  at: Position | undefined,
  { engine }: Known,
): boolean =>
  (characteristic === of || of.derivations.some(({ inputs }) => inputs.includes(characteristic.id))) &&
  (at === undefined || relate(engine.document.layout, at, position.family)?.includes(position) === true);

function explained(
  each: Finding,
  of: Characteristic,
  { characteristic, position, read, anew }: EndedReading,
  known: Known,
): Finding {
  const { log, session, other } = anew;
  const name = each.at === undefined ? of.label : namedAt(of.label, each.at);
  const lacking = each.at === undefined ? characteristic.label : namedAt(characteristic.label, position);
  const again = characteristic === of ? name : `${name} is worked out from ${lacking}, which`;
  const reason = `${log.document.joint.sequence.joint} tightened ${WAYS[other]} on ${log.date ?? session.date}, after the reading of ${read.date}`;
  const fact = `${again} is to be measured again: ${reason}`;
  const hint = other === 'fasteners' ? readWithThem(characteristic, read, known) : '';
  return {
    ...each,
    fact,
    message: `${fact}${hint}`,
    again: `${lacking}: ${reason}`,
    place: session.placeOf(log.span),
  };
}

const WAYS: Readonly<Record<ClampedAnew['other'], string>> = {
  fasteners: 'with new fasteners',
  lubricant: 'with another lubricant',
  torque: 'to another torque',
};

/** What is said of bolts that were new already when a housing was honed or measured. */
function readWithThem({ of, dependsOn }: Characteristic, read: SessionDocument, known: Known): string {
  const parts = [of, ...dependsOn].flatMap((id) =>
    id === undefined ? [] : (known.registry.parts.find(id) ?? []),
  );
  const bolts = parts.find(({ plural }) => plural.endsWith(' bolts'));
  return bolts === undefined
    ? ''
    : `; if it was read with the new bolts, write replaced: [{ part: ${bolts.plural} }] in the session of ${read.date}`;
}
