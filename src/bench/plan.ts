import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Registry } from '../characteristics/registry.ts';
import { limitsOfFitted } from '../checks/grades/madeSize.ts';
import type { Engine } from '../documents/assemble.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import type { Stage } from '../documents/session/stage.ts';
import type { Family } from '../layout/family.ts';
import type { Position } from '../layout/position.ts';
import { relate } from '../layout/relate.ts';
import { type PlannedGrid, plannedGrid } from './grids.ts';
import { usualInstrument } from './instruments.ts';
import { inBenchOrder } from './order.ts';
import { plannedSteps } from './steps.ts';

/** What to measure of one characteristic: where, at which points of each part, with what. */
export interface PlannedBlock {
  readonly measure: string;
  readonly family: Family;
  readonly positions: readonly Position[];
  readonly grid: PlannedGrid;
  /** By its name in the register; undefined where the register has none that fits. */
  readonly instrument: string | undefined;
}

/** What a session is to measure, in the order of the bench. */
export interface Plan {
  readonly blocks: readonly PlannedBlock[];
}

export interface PlanRequest {
  readonly stage: Stage;
  /** Ids to measure instead of what the limits name. */
  readonly only?: readonly string[] | undefined;
}

/**
 * Every position that the limits name, as it is read: a limit on a taper or on out of round asks for diameters at
 * enough points, one on a ratio for its volumes, one on a clearance for its parts where they are measured anyway, else for the clearance itself.
 */
export function planSession(engine: Engine, registry: Registry, request: PlanRequest): Plan {
  const limited = new Map(
    registry.all.map((each) => [each.id, limitedPositions(each, engine, request.stage)] as const),
  );
  const wanted = request.only ?? wantedIds(registry, limited, latestMeasured(engine));
  const chosen = inBenchOrder(registry.all, request.stage).filter((each) => wanted.includes(each.id));
  return {
    blocks: chosen.flatMap((each) => {
      const positions = positionsFor(each, { engine, registry, limited, stage: request.stage });
      if (positions.length === 0) return [];
      return [
        {
          measure: each.id,
          family: each.family,
          positions,
          grid: plannedGrid(
            each,
            engine,
            registry,
            (id) => hasLimits(limited, id),
            (id) => isLimitedForLength(registry.find(id), limited, engine),
          ),
          instrument: usualInstrument(each, engine),
        },
      ];
    }),
  };
}

type Limited = ReadonlyMap<string, readonly Position[]>;

const hasLimits = (limited: Limited, id: string): boolean => (limited.get(id)?.length ?? 0) > 0;

/** A limit for a length of the part, `per: 100 mm`. */
const isLimitedForLength = (of: Characteristic | undefined, limited: Limited, engine: Engine): boolean =>
  of !== undefined &&
  (limited.get(of.id) ?? []).some(
    (position) => limitsOfFitted(engine, undefined, of, position).per !== undefined,
  );

function allPositions({ family, id }: Characteristic, engine: Engine, stage: Stage): readonly Position[] {
  return family.isNamedBySession
    ? plannedSteps(engine, id, stage)
    : engine.document.layout.positionsOf(family);
}

const limitedPositions = (of: Characteristic, engine: Engine, stage: Stage): readonly Position[] =>
  allPositions(of, engine, stage).filter(
    (position) => Object.keys(limitsOfFitted(engine, undefined, of, position).bands).length > 0,
  );

/** A shop goes over an engine the way it did last time, so what was read then is wanted again. */
function latestMeasured({ sessions }: Engine): readonly string[] {
  const last: SessionDocument | undefined = sessions.at(-1);
  return (last?.blocks ?? []).map((block) => block.measure.id);
}

function wantedIds(registry: Registry, limited: Limited, before: readonly string[]): readonly string[] {
  const isLimited = registry.all.filter((each) => hasLimits(limited, each.id));
  const read = isLimited.filter((each) => each.derivations.length === 0).map((each) => each.id);
  const forWorkedOut = isLimited.filter(isNeverRead).flatMap((each) => readFor(each, registry));
  const parts = new Set([...before, ...read, ...forWorkedOut]);
  const direct = isLimited
    .filter((each) => each.derivations.length > 0 && !isNeverRead(each))
    .filter((each) => !isWorkedOut(each, registry, parts))
    .map((each) => each.id);
  return [...parts, ...direct];
}

/** Form, and what no instrument shows, such as a fit of two sizes or a ratio of volumes. */
const isNeverRead = ({ derivations, onlyWithLimits, usual }: Characteristic): boolean =>
  derivations.length > 0 && (onlyWithLimits === true || usual === 'other');

/** What is read for a figure that is only worked out: by its shortest route, down to what an instrument shows. */
function readFor(
  of: Characteristic,
  registry: Registry,
  onTheWay: readonly string[] = [],
): readonly string[] {
  const [shortest] = of.derivations.toSorted((a, b) => a.inputs.length - b.inputs.length);
  return (shortest?.inputs ?? []).flatMap((id) => {
    const input = registry.find(id);
    if (input === undefined || onTheWay.includes(id)) return [];
    return isNeverRead(input) ? readFor(input, registry, [...onTheWay, of.id]) : [id];
  });
}

/** From what is measured anyway, or from nominal sizes alone. */
function isWorkedOut(
  { derivations }: Characteristic,
  registry: Registry,
  parts: ReadonlySet<string>,
): boolean {
  const isThere = (id: string): boolean => {
    const input = registry.find(id);
    return parts.has(id) || (input !== undefined && isWorkedOut(input, registry, parts));
  };
  return derivations.some(({ inputs }) => inputs.every(isThere));
}

interface PlanContext {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly limited: Limited;
  readonly stage: Stage;
}

/** Those with limits of its own or of something worked out from it at the same place; all, where none has any. */
function positionsFor(of: Characteristic, around: PlanContext): readonly Position[] {
  const { engine, registry, limited, stage } = around;
  const all = allPositions(of, engine, stage);
  const derived = registry.all.filter((each) =>
    each.derivations.some((derivation) => derivation.inputs.includes(of.id)),
  );
  const named = new Set(
    [of, ...derived]
      .flatMap((each) => limited.get(each.id) ?? [])
      .flatMap((position) => relate(engine.document.layout, position, of.family) ?? []),
  );
  const chosen = all.filter((position) => named.has(position));
  return chosen.length === 0 ? all : chosen;
}
