import { isAt } from '../../../checks/history/dependsOn.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Part } from '../../../layout/part.ts';
import type { PlanContext } from '../context.ts';
import type { Cut } from '../cut.ts';
import { bySteps } from '../cutSteps.ts';
import { isOfRenewedWhole, isRenewedAlone } from './renewed.ts';

/**
 * Whether a figure is of what comes anew with other work: of what is bought for a journal that is ground or a bore that is bored,
 * or of the fit between them; with a new crankshaft its shells and its fits, with a new liner its rings and its fits.
 */
export function comesWith(row: Row, cuts: readonly Cut[], context: PlanContext): boolean {
  const { characteristic, position } = row;
  const { registry } = context;
  const inputs = characteristic.derivations.flatMap((each) => each.inputs.map((id) => registry.find(id)?.of));
  const own = registry.parts.find(characteristic.of ?? '');
  // What is out of the renewed part itself is why it is renewed.
  if (own !== undefined && isOfRenewedWhole(context, own)) return false;
  const sized = own?.sized;
  const isFit = ({ id }: Part): boolean => characteristic.figure === 'clearance' && inputs.includes(id);
  const isBoughtFor = ({ id }: Part): boolean => sized?.fits === id;
  const [isShell, isRing] = [sized?.liesIn !== undefined, sized?.made === undefined];
  const comesNew = (of: Part): boolean =>
    ((isFit(of) || (isShell && isBoughtFor(of))) && isOfRenewedWhole(context, of, position)) ||
    // Of shells the worn ones are renewed, and all are chosen; a piston goes into a new liner as well.
    (of.sized?.liesIn === undefined &&
      (isFit(of) || (isRing && isBoughtFor(of))) &&
      isRenewedAlone(context, of, position));
  const comesCut = (cut: Cut): boolean => {
    if (cut.renews !== undefined) return isFit(cut.part) || isBoughtFor(cut.part);
    const { past, left } = bySteps(cut);
    const isPast = past !== undefined && isAtPlace(past, position, context);
    // A liner that is only worn may stay, and its rings are put right by themselves.
    const isCertain = isPast && isRenewedForCertain(past, position, context);
    const isApart = context.engine.planning.separate.has(cut.part.id);
    const isCut = left?.urgency === 'must' && (isApart ? isAtPlace(left, position, context) : !isPast);
    return (
      (isCut && (isFit(cut.part) || isBoughtFor(cut.part))) ||
      (isPast && isFit(cut.part)) ||
      (isCertain && isRing && isBoughtFor(cut.part))
    );
  };
  return cuts.some(comesCut) || registry.parts.all.some(comesNew);
}

/** Out, seen to be beyond use, or agreed to. */
function isRenewedForCertain(
  { part, rows, found }: Cut,
  position: Row['position'],
  { engine, registry, state }: PlanContext,
): boolean {
  const { document } = engine;
  const agreed = [document.handedOver, ...state.run.map(({ handedOver }) => handedOver)]
    .flatMap((each) => each.agreed.flatMap(({ items }) => items))
    .filter(({ operation }) => operation === 'renew')
    .flatMap(({ parts }) => parts);
  const out = rows
    .filter(({ judgement }) => judgement.verdict === 'out')
    .map((row) => ({ part, positions: [row.position] }));
  return [...out, ...found.flatMap(({ parts }) => parts), ...agreed].some((at) =>
    isAt(part.id, position, at, registry, document.layout),
  );
}

const isAtPlace = (
  { part, groups }: Cut,
  position: Row['position'],
  { registry, engine }: PlanContext,
): boolean => {
  const positions = groups.flatMap(({ places }) => places.map((place) => place.position));
  return isAt(part.id, position, { part, positions }, registry, engine.document.layout);
};
