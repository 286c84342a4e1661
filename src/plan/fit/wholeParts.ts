import { once } from '../../checks/once.ts';
import type { NotOffered, OfferedPart, OfferedParts } from '../../documents/parts/offeredPart.ts';
import { tableName } from '../../layout/naming.ts';
import type { Part } from '../../layout/part.ts';
import { sum } from '../../measurement/sample.ts';
import { subtract, ZERO } from '../../quantity/fraction.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import { type Cut, cutsOf } from '../work/cut.ts';
import { jobName } from '../work/operation.ts';
import { pistonFit } from './pistonFit.ts';
import type { ShelfPistons } from './shelfPistons.ts';
import { shellFits } from './shellFit.ts';
import { costOf } from './wanted.ts';
import { withPart } from './withPart.ts';

/** A part that is once in an engine, such as its crankshaft, chosen from those that lie on the shelf. */
export interface WholeFit {
  readonly chosen: OfferedPart;
  /** What need not be done to the engine's own. */
  readonly inPlaceOf: readonly string[];
}

export interface WholeFits {
  readonly fits: readonly WholeFit[];
  /** The engine as if all that were chosen were fitted. */
  readonly context: PlanContext;
  readonly notOffered: readonly NotOffered[];
}

/**
 * In place of what would have to be cut or renewed: of each kind one, so that with the shells and pistons of the shelf
 * the fewest places go without, and all fits taken together lie as near to the middle as can be.
 */
export function wholeFits(context: PlanContext, { offered }: OfferedParts, pistons: ShelfPistons): WholeFits {
  const notOffered: NotOffered[] = [];
  const kinds = [...new Set(offered.map(({ part }) => part))].filter(({ id }) => id !== 'piston');
  const choices = kinds.flatMap((part) => {
    const inPlaceOf = neededFor(part, context);
    const sound = offered
      .filter((each) => each.part === part)
      .flatMap((chosen): readonly Choice[] => {
        const alone = once(() => withPart(context, chosen));
        const why = whyNot(chosen, inPlaceOf, context, pistons, alone);
        if (why !== undefined) notOffered.push({ called: called(chosen), why });
        return why === undefined ? [{ chosen, inPlaceOf, alone }] : [];
      });
    return sound.length === 0 ? [] : [sound];
  });
  const ways = everyWay(choices).map((fits) => {
    const [first, ...others] = fits;
    const fitted = others.reduce((each, { chosen }) => withPart(each, chosen), first?.alone() ?? context);
    // Of a single way nobody asks: all is chosen for it once, and not here.
    return { fits, context: fitted, worth: once(() => worthOf(fitted, pistons)) };
  });
  const best = ways.reduce((a, b) => (isBetter(b.worth(), a.worth()) ? b : a));
  const left = choices.flat().filter((each) => !best.fits.includes(each));
  return {
    fits: best.fits,
    context: best.context,
    notOffered: [...notOffered, ...left.map(({ chosen }) => ({ called: called(chosen), why: NO_WORSE }))],
  };
}

const nameOf = ({ part, renews }: Cut): string =>
  renews === undefined
    ? jobName(part.sized?.made === 'over' ? 'bore' : 'grind', part)
    : jobName('renew', renews);

interface Choice extends WholeFit {
  /** The engine with this one alone. */
  readonly alone: () => PlanContext;
}

const called = ({ part, mark }: OfferedPart): string => `${part.label} ${mark}`;

const NO_WORSE = 'it would do; the chosen one fits no worse';

const everyWay = <T>(choices: readonly (readonly T[])[]): readonly (readonly T[])[] =>
  choices.reduce<readonly (readonly T[])[]>(
    (ways, options) => ways.flatMap((way) => options.map((option) => [...way, option])),
    [[]],
  );

/** What must be done to the engine's own part, by the names of jobs. */
function neededFor(part: Part, context: PlanContext): readonly string[] {
  const within = context.registry.parts.within(part);
  const cuts = cutsOf(context).filter((cut) => cut.urgency === 'must' && within.includes(cut.part));
  const renewed = context.found.filter(
    ({ remedy, parts }) => remedy === 'renew' && parts.some((at) => within.includes(at.part)),
  );
  const cracked = context.cracked.filter((row) => within.some(({ id }) => id === row.characteristic.of));
  return [
    ...new Set([
      ...cuts.map(nameOf),
      ...renewed.map(({ on }) => `renew ${on.join(', ')}`),
      ...cracked.map(() => jobName('renew', part)),
    ]),
  ];
}

function whyNot(
  offered: OfferedPart,
  inPlaceOf: readonly string[],
  context: PlanContext,
  pistons: ShelfPistons,
  alone: () => PlanContext,
): string | undefined {
  const surfaces = surfacesOf(offered.part, context, pistons);
  if (surfaces.all.length === 0) return 'nothing is chosen for it by measured sizes';
  if (inPlaceOf.length === 0) return `the engine's own ${offered.part.label} needs no other`;
  const fitted = alone();
  const unmeasured = surfaces.asked.flatMap((part) => unmeasuredOf(part, fitted));
  if (unmeasured.length > 0 || surfaces.all.every((part) => unmeasuredOf(part, fitted).length > 0))
    return `not measured since it came to lie here: ${unmeasured.join('; ') || 'nothing that decides'}`;
  const [cut] = neededFor(offered.part, fitted);
  return cut === undefined ? undefined : `it must be cut itself: ${cut}`;
}

interface Surfaces {
  readonly all: readonly Part[];
  /** Those for which something is chosen from the shelf: their sizes have to be known. */
  readonly asked: readonly Part[];
}

/** The journals, bores and housings of a part round which or in which something is fitted. */
function surfacesOf(part: Part, { registry, engine }: PlanContext, { pistons }: ShelfPistons): Surfaces {
  const within = registry.parts.within(part);
  const mates = registry.parts.all.filter(
    ({ sized }) => sized?.made !== undefined && sized.fits !== undefined,
  );
  const of = (fitted: readonly Part[]): readonly Part[] =>
    within.filter(({ id }) => fitted.some(({ sized }) => sized?.fits === id || sized?.liesIn === id));
  const isChosen = (mate: Part): boolean =>
    engine.stock.shells.some((each) => each.part === mate) || (mate.id === 'piston' && pistons.length > 0);
  return { all: of(mates), asked: of(mates.filter(isChosen)) };
}

/** `crankpin diameter 2, 3`. */
function unmeasuredOf(part: Part, context: PlanContext): readonly string[] {
  const size = sizeOfPart(context, part);
  const { rows } = context.state;
  const open = context.engine.document.layout
    .positionsOf(part.family)
    .filter(
      (position) =>
        !rows.some(
          (row) => row.characteristic === size && row.position === position && row.routes.length > 0,
        ),
    );
  return open.length === 0 ? [] : [`${size?.label ?? part.label} ${open.map(tableName).join(', ')}`];
}

interface Worth {
  /** Places for which nothing on the shelf does. */
  readonly without: number;
  readonly cost: number;
}

const isBetter = (a: Worth, b: Worth): boolean =>
  a.without < b.without || (a.without === b.without && a.cost < b.cost);

/** What the shelf makes of an engine: how many places go without, and how far the others lie from their middles. */
function worthOf(context: PlanContext, shelf: ShelfPistons): Worth {
  const cuts = cutsOf(context);
  const places = shellFits(context, cuts).flatMap((each) => each.places);
  const pistons = pistonFit(context, cuts, shelf);
  const costs = [
    ...places.map(({ chosen, wanted }) => chosen && wanted && costOf(chosen.clearance, EXACT, wanted)),
    ...(pistons?.places ?? []).map(({ size, piston, wanted }) =>
      costOf(subtract(size, piston.diameter), EXACT, wanted),
    ),
    ...(pistons?.problem === undefined ? [] : [undefined]),
  ];
  const known = costs.flatMap((cost) => cost ?? []);
  return { without: costs.length - known.length, cost: sum(known) };
}

const EXACT = { below: ZERO, above: ZERO };
