import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Registry } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import { shopGrid } from '../documents/session/readBlock.ts';
import type { ReadingBlock, Station } from '../documents/session/reading.ts';
import { withUnitName } from '../quantity/format.ts';
import { divide, toNumber } from '../quantity/fraction.ts';

/** The points at which each position is read: rows along the part, columns round it. Empty lists: one reading. */
export interface PlannedGrid {
  readonly stations: readonly string[];
  readonly directions: readonly string[];
  /** How far from one end each station is, `~` where nobody has stated it; without them none is asked for. */
  readonly distances?: readonly string[];
  /** The shop states this grid once for all sessions, so a session need not. */
  readonly fromShop: boolean;
}

const ONE_READING: PlannedGrid = { stations: [], directions: [], fromShop: false };

/**
 * As the shop states it; else as the part was gone over in the latest session that has it; else as many points as the
 * limits on its form ask for: several directions for out of round, several stations for taper.
 */
export function plannedGrid(
  of: Characteristic,
  engine: Engine,
  registry: Registry,
  isLimited: (id: string) => boolean,
  isLimitedForLength: (id: string) => boolean,
): PlannedGrid {
  const shop = shopGrid(of, engine.grids);
  if (shop !== undefined) {
    const stations = shop.stations.map((station) => station.name ?? '');
    return { stations, directions: shop.directions, fromShop: true };
  }
  const asksForDistances = registry.all.some(
    (each) => isWorkedOutFrom(of, each) && isLimitedForLength(each.id),
  );
  const { stations, grid } = earlierGrid(of, engine) ?? fromUsual(gridForLimits(of, registry, isLimited));
  const isAsked = asksForDistances || stations.some(({ distance }) => distance !== undefined);
  return isAsked && stations.length > 0
    ? { ...grid, distances: stations.map((each) => distanceText(each, engine)) }
    : grid;
}

interface FoundGrid {
  readonly grid: PlannedGrid;
  readonly stations: readonly Station[];
}

const fromUsual = (grid: PlannedGrid): FoundGrid => ({
  grid,
  stations: grid.stations.map((name) => ({ name })),
});

const isWorkedOutFrom = (of: Characteristic, { derivations }: Characteristic): boolean =>
  derivations.some(({ inputs }) => inputs.includes(of.id));

function distanceText({ distance }: Station, { units }: Engine): string {
  const unit = units.get('length');
  if (distance === undefined || unit === undefined) return '~';
  return withUnitName(`${Number(toNumber(divide(distance, unit.factor)).toFixed(6))}`, unit);
}

function earlierGrid(of: Characteristic, { sessions }: Engine): FoundGrid | undefined {
  const isOurs = ({ measure, from }: ReadingBlock): boolean => measure.id === of.id && from === undefined;
  const blocks = sessions.flatMap((session) => session.blocks.filter(isOurs));
  const [first] = blocks.at(-1)?.positions ?? [];
  if (first === undefined || of.halves === true || of.family.isNamedBySession) return undefined;
  const stations = first.stations.filter(({ name }) => name !== undefined);
  return {
    stations,
    grid: {
      stations: stations.flatMap(({ name }) => name ?? []),
      directions: first.directions.flatMap((direction) => direction ?? []),
      fromShop: false,
    },
  };
}

function gridForLimits(
  of: Characteristic,
  registry: Registry,
  isLimited: (id: string) => boolean,
): PlannedGrid {
  if (of.halves === true) return { ...ONE_READING, stations: ['upper', 'lower'] };
  const usual = of.usualGrid;
  const forms = registry.all.filter(
    (each) =>
      each.onlyWithLimits === true &&
      each.quantity === of.quantity &&
      isLimited(each.id) &&
      isWorkedOutFrom(of, each),
  );
  if (usual === undefined) return ONE_READING;
  const round = forms.some((each) => each.figure !== 'taper');
  const along = forms.some((each) => each.figure !== 'out of round');
  return {
    stations: along ? usual.stations : [],
    directions: round ? usual.directions : [],
    fromShop: false,
  };
}
