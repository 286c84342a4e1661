import { block, head } from '../characteristics/block/blockAndHead.ts';
import { chambers } from '../characteristics/block/chambers.ts';
import { displacement } from '../characteristics/block/displacement.ts';
import { liners } from '../characteristics/block/liners.ts';
import { volumes } from '../characteristics/block/volumes.ts';
import type { Characteristic } from '../characteristics/characteristic.ts';
import { crankShape } from '../characteristics/crankAndRods/crankShape.ts';
import { rodShape } from '../characteristics/crankAndRods/rodShape.ts';
import { shells } from '../characteristics/crankAndRods/shells.ts';
import { crankshaft } from '../characteristics/crankshaft.ts';
import { cylinders } from '../characteristics/cylinders.ts';
import { mains } from '../characteristics/mains.ts';
import { pistonPins } from '../characteristics/pistons/pistonPins.ts';
import { pistons } from '../characteristics/pistons/pistons.ts';
import { rings } from '../characteristics/pistons/rings.ts';
import { behindWhatTheyFollow } from '../characteristics/registry.ts';
import { rods } from '../characteristics/rods.ts';
import { running } from '../characteristics/running.ts';
import { valveGear } from '../characteristics/valveGear/valveGear.ts';
import type { Stage } from '../documents/session/stage.ts';

/**
 * The order of assembly, parts before what is worked out of them. Common practice, no source. What is not listed comes
 * after it in the order of the registry, the running engine last.
 */
const ASSEMBLY: readonly (readonly Characteristic[])[] = [
  block,
  liners,
  crankShape,
  mains,
  crankshaft,
  rodShape,
  rods,
  shells,
  pistonPins,
  cylinders,
  rings,
  pistons,
  head,
  valveGear,
  chambers,
  displacement,
  volumes,
];

/** From the top down, as an engine is opened: what stands closed tells its fits before any part is taken out. */
const TEARDOWN: readonly (readonly Characteristic[])[] = [
  running,
  valveGear,
  volumes,
  displacement,
  chambers,
  head,
  pistons,
  liners,
  crankShape,
  crankshaft,
  mains,
  rods,
];

/** Sorts into the order of the bench at a stage; what says after what it is measured stands behind that. */
export function inBenchOrder(all: readonly Characteristic[], stage: Stage): readonly Characteristic[] {
  const assembled = sorted(all, placesOfParts(all));
  return behindWhatTheyFollow(isTakenApart(stage) ? inTeardownOrder(assembled) : assembled);
}

/** An engine that stands or is taken apart is measured as it is before any part of it. */
const isTakenApart = (stage: Stage): boolean => stage === 'teardown' || stage === 'service';

/** What the assembled engine alone can tell, and then each fit as it is opened; then part by part. */
function inTeardownOrder(assembled: readonly Characteristic[]): readonly Characteristic[] {
  const opening = sorted(assembled, placesIn(TEARDOWN));
  const [closed, opened, apart] = (['closed', 'opened', 'apart'] as const).map((when) =>
    (when === 'apart' ? assembled : opening).filter((each) => whenReported(each) === when),
  );
  return [...(closed ?? []), ...(opened ?? []), ...(apart ?? [])];
}

type When = 'closed' | 'opened' | 'apart';

const whenReported = ({ isAssemblyFigure, figure }: Characteristic): When =>
  isAssemblyFigure === true ? 'closed' : figure === 'clearance' ? 'opened' : 'apart';

type Places = ReadonlyMap<string, number>;

const placesIn = (sections: readonly (readonly Characteristic[])[]): Places =>
  new Map(sections.flat().map(({ id }, index) => [id, index]));

const sorted = (all: readonly Characteristic[], places: Places): readonly Characteristic[] => {
  const placeOf = ({ id }: Characteristic): number => places.get(id) ?? Number.POSITIVE_INFINITY;
  // Infinities are equal, and their difference is none.
  return all.toSorted((a, b) => (placeOf(a) === placeOf(b) ? 0 : placeOf(a) - placeOf(b)));
};

/** In the order of assembly, and behind all that it is worked out from. */
function placesOfParts(all: readonly Characteristic[]): Places {
  const listed = placesIn(ASSEMBLY);
  const byId = new Map(
    all.map((each, index) => [each.id, { each, own: listed.get(each.id) ?? BEHIND + index }]),
  );
  const places = new Map<string, number>();
  const placeOf = (id: string): number => {
    const known = places.get(id);
    const found = byId.get(id);
    if (known !== undefined || found === undefined) return known ?? 0;
    // A formula that leads back to itself must end.
    places.set(id, found.own);
    const inputs = found.each.derivations.flatMap(({ inputs: from }) => from.map(placeOf));
    const place = Math.max(found.own, ...inputs.map((input) => input + STEP_BEHIND));
    places.set(id, place);
    return place;
  };
  for (const { id } of all) placeOf(id);
  return places;
}

/** Beyond all that is listed. */
const BEHIND = 1_000_000;

/** So little that nothing else comes between. */
const STEP_BEHIND = 0.001;
