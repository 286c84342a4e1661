import { type Finding, finding } from '../../checks/finding.ts';
import { UNKNOWN_WORK } from '../../checks/open/ofPlan.ts';
import { alignmentDistance, didYouMean } from '../../diagnostic/suggestion.ts';
import { plainName } from '../../documents/planning/namedWork.ts';
import type { PlanContext } from '../work/context.ts';
import { boxesOf, isPassingBox, USUAL } from './boxes.ts';

/** Boxes that somebody ticked and that the page does not have, and required ones that are nearly a usual box. */
export const strangeBoxes = (context: PlanContext): readonly Finding[] => [
  ...strangeConfirmations(context),
  ...nearlyRequired(context),
];

function strangeConfirmations(context: PlanContext): readonly Finding[] {
  const { engine, state } = context;
  const confirmed = [engine.document, ...state.run].flatMap(({ handedOver }) => handedOver.confirmed);
  if (confirmed.length === 0) return [];
  const boxes = [...boxesOf(context).map(({ what }) => what), RELEASED];
  const known = new Set(boxes.map(plainName));
  return confirmed
    .filter(({ what }) => !known.has(plainName(what)) && !isPassingBox(what))
    .map(({ what, place }) => {
      const help =
        didYouMean(what, boxes) ??
        `if it is the shop's own, require it: plan: { required: [${what}] } in shop.yaml`;
      return finding(
        UNKNOWN_WORK,
        place,
        `confirmed: ${what}: the page before closing up has no such box; ${help}`,
      );
    });
}

const RELEASED = 'released';

/** A shop requires boxes of its own as well: only a slip in the words of a usual one is asked about. */
const nearlyRequired = ({ engine }: PlanContext): readonly Finding[] =>
  engine.planning.required.flatMap(({ what, place }) => {
    const meant = USUAL.find((usual) => isSlipOf(plainName(what), plainName(usual)));
    const message = `required: ${what}: this adds a box beside the usual one, ${meant}; did you mean that one?`;
    return meant === undefined ? [] : [finding(UNKNOWN_WORK, place, message)];
  });

const isSlipOf = (said: string, usual: string): boolean => {
  const distance = alignmentDistance(said, usual);
  return distance > 0 && distance <= MOST_SLIPS;
};

/** Two letters: `each cap` and `each rod` are two boxes. */
const MOST_SLIPS = 2;
