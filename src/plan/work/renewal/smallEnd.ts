import { limitsOfFitted } from '../../../checks/grades/madeSize.ts';
import { limitsAt } from '../../../checks/judge/limits.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Part } from '../../../layout/part.ts';
import { compare, ZERO } from '../../../quantity/fraction.ts';
import type { PlanContext } from '../context.ts';

/**
 * What brings back a worn small end, and the play of the pin in it: its bush, or the rod where pins are pressed in, which has
 * none. Undefined of any other figure. Common practice, no source.
 */
export function renewedOfSmallEnd(row: Row, context: PlanContext): Part | undefined {
  const { registry, found, state } = context;
  const { characteristic, position } = row;
  const bush = registry.parts.find('small_end_bush');
  const isWorn = state.rows.some((each) => isOfBore(each) && each.position === position && isPast(each));
  const isSeen = found.some(
    ({ remedy, parts }) =>
      remedy === 'renew' &&
      parts.some(
        ({ part, positions }) => part === bush && (positions.length === 0 || positions.includes(position)),
      ),
  );
  const isAsked = isOfBore(row) || (characteristic.id === PLAY && (isWorn || isSeen));
  if (!isAsked) return undefined;
  return isPressed(position, context) ? registry.parts.find('rod') : bush;
}

const PLAY = 'small_end_clearance';

const isOfBore = ({ characteristic: { id } }: Row): boolean =>
  id === 'small_end_bore' || id === 'small_end_out_of_round' || id === 'small_end_taper';

const isPast = ({ judgement: { verdict } }: Row): boolean => verdict === 'out' || verdict === 'worn';

/** By the limits of new parts: a press fit is below nought. */
function isPressed(position: Row['position'], { engine, registry, state }: PlanContext): boolean {
  const play = registry.find(PLAY);
  if (play === undefined) return false;
  const inForce = limitsOfFitted(engine, state.session, play, position);
  const most = limitsAt(play, inForce, nothing, nothing).bands.new?.max;
  return most !== undefined && compare(most.amount, ZERO) <= 0;
}

const nothing = (): undefined => undefined;
