import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { add, type Fraction, subtract } from '../../quantity/fraction.ts';
import type { PlanContext } from '../work/context.ts';
import type { Cut } from '../work/cut.ts';
import { type InPlace, inPlaceAt } from './inPlace.ts';
import type { TableChoice } from './selectTable.ts';
import { onShelf } from './shelf.ts';
import { type AskedPlace, askedAt, type FitProblem, halfOf, mixingOf } from './shellPlace.ts';
import { type ChosenShells, fitShells, isByTable } from './shells.ts';
import type { Wanted } from './wanted.ts';

/** Shells chosen for every bearing of one kind. */
export interface ShellFit {
  readonly part: Part;
  readonly clearance: Characteristic;
  readonly places: readonly FittedPlace[];
  readonly inPlace: readonly InPlace[];
  /** The part that is ground or renewed first: its shells are chosen when it is back and measured. */
  readonly waitsFor: Part | undefined;
}

export interface FittedPlace {
  readonly position: Position;
  readonly wanted: Wanted | undefined;
  readonly chosen: ChosenShells | undefined;
  /** Of what is chosen, with what the readings differ by. */
  readonly clearance: { readonly least: Fraction; readonly greatest: Fraction } | undefined;
  readonly table: TableChoice | undefined;
  readonly problems: readonly FitProblem[];
}

/** Parts that lie in a housing round a journal and of which there is stock. */
export const shellFits = (context: PlanContext, cuts: readonly Cut[]): readonly ShellFit[] =>
  context.registry.parts.all.flatMap((part) => shellFit(context, part, cuts) ?? []);

function shellFit(context: PlanContext, part: Part, cuts: readonly Cut[]): ShellFit | undefined {
  const { engine, registry } = context;
  const [journal, housing] = [part.sized?.fits, part.sized?.liesIn].map((id) =>
    registry.parts.find(id ?? ''),
  );
  const fit = registry.all.find(({ of, figure }) => of === part.id && figure === 'clearance');
  if (journal === undefined || housing === undefined || fit === undefined) return undefined;
  const shelf = onShelf(engine.stock.shells, engine).filter((each) => each.part === part);
  if (shelf.length === 0) return undefined;
  const { parts } = registry;
  const renewed = [
    ...context.wholesRenewed.map(({ part }) => part),
    ...cuts.flatMap(({ renews }) => renews ?? []),
  ];
  const cut = cuts.find((each) => each.part === journal && each.urgency === 'must');
  const waitsFor =
    renewed.find((whole) => parts.within(whole).some((each) => each === journal || each === housing)) ??
    cut?.part;
  if (waitsFor !== undefined) return { part, clearance: fit, places: [], inPlace: [], waitsFor };
  const positions = engine.document.layout.positionsOf(part.family);
  if (positions.length === 0) return undefined;
  const inPlace = positions.flatMap((position) => inPlaceAt(context, fit, position) ?? []);
  const asked = positions
    .filter((each) => !inPlace.some(({ position }) => position === each))
    .map((position) => askedAt(context, { part, fit, journal, housing }, position, shelf));
  const placed = asked.flatMap(({ place }) => place ?? []);
  const found = fitShells(placed, shelf.map(halfOf), mixingOf(context, part));
  return {
    part,
    clearance: fit,
    waitsFor: undefined,
    inPlace,
    places: asked.map((each) => fittedPlace(each, each.place && found[placed.indexOf(each.place)])),
  };
}

function fittedPlace(asked: AskedPlace, chosen: ChosenShells | undefined): FittedPlace {
  const { position, wanted, table, problems, place } = asked;
  const base = { position, wanted, table, problems: [...problems, ...takenByOthers(asked, chosen)], chosen };
  if (chosen === undefined || place === undefined) return { ...base, clearance: undefined };
  const within = add(chosen.upper.within, chosen.lower.within);
  return {
    ...base,
    clearance: {
      least: subtract(chosen.clearance, add(place.below, within)),
      greatest: add(chosen.clearance, add(place.above, within)),
    },
  };
}

/** Of what the place would have alone: all of it, or what its table asks for. */
function takenByOthers(
  { alone, table }: AskedPlace,
  chosen: ChosenShells | undefined,
): readonly FitProblem[] {
  if (alone === undefined) return [];
  if (chosen === undefined) return [{ kind: 'too few' }];
  const classes = table?.classes;
  const hasLost = isByTable(alone, classes) && !isByTable(chosen, classes);
  return classes !== undefined && hasLost ? [{ kind: 'class taken', classes }] : [];
}
