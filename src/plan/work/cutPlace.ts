import type { Row } from '../../checks/judge/row.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { type Fraction, fraction, multiply, parseDecimal, toNumber, ZERO } from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';
import { type Damage, reboreStep, regrindStep, type StepChoice } from '../cut/cleanUp.ts';
import type { PlanContext } from './context.ts';
import { damageAt, isDepthDoubted } from './damage.ts';
import { type CutStep, type ServiceSteps, serviceSteps } from './serviceSteps.ts';

/** One journal or bore: what was read of it, what a cut has to reach through, and the step that does. */
export interface CutPlace {
  readonly row: Row;
  readonly position: Position;
  /** What the reach is worked out from, in the order in which it is added up. */
  readonly terms: readonly Term[];
  readonly choice: StepChoice<CutStep>;
  readonly from: ServiceSteps['from'];
}

export interface Term {
  readonly words: string;
  readonly amount: Fraction;
  /** How often it counts; below nought it is taken off. */
  readonly times: number;
  /** Not measured and not stated: by common practice, or nought. */
  readonly isAssumed?: true;
  /** Stated, and check asks whether it is a slip of the pen. */
  readonly isDoubted?: true;
}

/** Nothing where the position was not measured. */
export function cutPlace(context: PlanContext, part: Part, row: Row): CutPlace | undefined {
  const [judged] = row.routes;
  if (judged === undefined) return undefined;
  const { position, characteristic } = row;
  const { steps, from } = serviceSteps(context, part, characteristic, row);
  const expanded = roundedUp(judged.route.expanded, row.lastDigit);
  const damage = damageAt(context, part, position);
  const of = { context, row, least: judged.least, greatest: judged.greatest, expanded, damage };
  const { terms, choice } = part.sized?.made === 'over' ? bored(of, part, steps) : ground(of, part, steps);
  return { row, position, terms, choice, from };
}

/** To the last digit of the readings, so that the sum goes up on paper, and a cut is never too small for it. */
function roundedUp(expanded: number, lastDigit: Fraction = fraction(1)): Fraction {
  const digits = Math.ceil(expanded / toNumber(lastDigit));
  return multiply(fraction(digits), lastDigit);
}

interface Worn {
  readonly context: PlanContext;
  readonly row: Row;
  readonly least: Fraction;
  readonly greatest: Fraction;
  readonly expanded: Fraction;
  readonly damage: Damage;
}

type Chosen = Pick<CutPlace, 'terms' | 'choice'>;

/** What is assumed where the shop states nothing, as it is said in each unit. */
const assumed = (inches: string, millimetres: string, { engine }: PlanContext): Fraction =>
  engine.units.get('length')?.name === 'mm'
    ? toBase(parseDecimal(millimetres), unitNamed('mm'))
    : toBase(parseDecimal(inches), unitNamed('in'));

/** Common practice, no source. */
const polishAssumed = (context: PlanContext): Fraction => assumed('0.0002', '0.005', context);
/** Boring size = piston + clearance - 0.02 mm for the hone, as one maker's service data have it; 0.0008 in. */
const honeAssumed = (context: PlanContext): Fraction => assumed('0.0008', '0.02', context);

function ground(worn: Worn, part: Part, steps: readonly CutStep[]): Chosen {
  const { context, least: smallest, expanded, damage } = worn;
  const polish = context.engine.planning.polish?.amount;
  const runout = runoutAt(worn, part);
  const wear = {
    smallest,
    runout: runout.amount,
    damage,
    expanded,
    polish: polish ?? polishAssumed(context),
  };
  return {
    choice: regrindStep(wear, steps),
    terms: [
      { words: 'smallest reading', amount: smallest, times: 1 },
      runout,
      ...damageTerm(worn, part, -2),
      { words: 'uncertainty', amount: expanded, times: -1 },
      { words: 'polish', amount: wear.polish, times: -1, ...(polish === undefined && { isAssumed: true }) },
    ],
  };
}

/** By the id of a part what throws it off its axis; of a pin, its index and throw, nothing is asked for yet. */
const RUNS_OUT_BY: Readonly<Record<string, string>> = { main_journal: 'crankshaft_runout' };

const readAt = ({ context: { state }, row }: Worn, measure: string | undefined): Row | undefined =>
  state.rows.find(
    ({ characteristic, position }) => characteristic.id === measure && position === row.position,
  );

function runoutAt(worn: Worn, { id }: Part): Term {
  const measure = RUNS_OUT_BY[id];
  const found = readAt(worn, measure);
  const read = found?.routes[0]?.greatest;
  const isBent = found?.judgement.verdict === 'out' || found?.judgement.verdict === 'worn';
  if (read !== undefined)
    return { words: isBent ? 'runout before straightening' : 'runout', amount: read, times: -1 };
  const words = measure === undefined ? 'index and throw' : 'runout';
  return { words, amount: ZERO, times: -1, isAssumed: true };
}

/** By the id of a part what says how far its axis moved as it wore. */
const OFF_CENTRE_BY: Readonly<Record<string, string>> = { cylinder: 'cylinder_centre_offset' };

function bored(worn: Worn, part: Part, steps: readonly CutStep[]): Chosen {
  const { context, least, greatest, expanded, damage } = worn;
  const offset = readAt(worn, OFF_CENTRE_BY[part.id])?.routes[0]?.greatest;
  const stock = context.engine.planning.honeStock?.amount;
  const honeStock = stock ?? honeAssumed(context);
  const centre = offset === undefined ? { unworn: least } : { offset };
  const wear = { largest: greatest, centre, damage, expanded, honeStock };
  return {
    choice: reboreStep(wear, steps),
    terms: [
      ...(offset === undefined
        ? [
            { words: 'largest reading', amount: greatest, times: 2 },
            { words: 'smallest reading, as if never worn', amount: least, times: -1 },
          ]
        : [
            { words: 'largest reading', amount: greatest, times: 1 },
            { words: 'off its old centre', amount: offset, times: 2 },
          ]),
      ...damageTerm(worn, part, 2),
      { words: 'uncertainty', amount: expanded, times: 1 },
      { words: 'to hone', amount: honeStock, times: 1, ...(stock === undefined && { isAssumed: true }) },
    ],
  };
}

function damageTerm({ context, row, damage }: Worn, part: Part, times: number): readonly Term[] {
  if (typeof damage === 'string') return [];
  const isDoubted = isDepthDoubted(context, part, row.position);
  return [{ words: 'depth of damage', amount: damage, times, ...(isDoubted && { isDoubted }) }];
}
