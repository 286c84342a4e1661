import { plainName } from '../../documents/planning/namedWork.ts';
import { gasketFit } from '../fit/otherFits.ts';
import { SUNDRIES, sundriesLeft, wasOpened } from '../order/opened.ts';
import { thicknessCalled, thicknessText } from '../order/thicknessText.ts';
import type { PlanContext } from '../work/context.ts';
import { type LeftOut, leftOutOf } from './leftOut.ts';
import { unstatedJoints } from './unstatedJoints.ts';
import { boxOfTest, CRACK_TESTED, untestedShaft } from './untestedShaft.ts';

/** What is ticked by hand before an engine is closed up. */
export interface Box {
  readonly what: string;
  readonly isRequired: boolean;
  /** Who ticked it. */
  readonly by: string | undefined;
  /** What was left out on purpose, without the reason, where the box is for that. */
  readonly leftOut: string | undefined;
}

/** What is looked at before an engine is closed up, and no reading shows. Common practice, no source. */
export const USUAL: readonly string[] = [
  'oil galleries brushed, blown through and plugged',
  'every part washed, dried and oiled',
  'ring tops upward, gaps staggered',
  'rods, caps and pistons: numbers and directions as they came',
  'bearing tangs seated, oil holes in line',
  'thrust faces aligned before the thrust cap is tightened',
  'crankshaft turned by hand after each cap',
  'timing marks in line',
  'nothing left inside: rags, tools, plugs',
  'second initials',
];

/**
 * The usual boxes, a crack test that is due and that no document speaks of, joints that only the manual speaks of, what an opened
 * engine takes anew, the head gasket that was chosen, what was left out on purpose, those that the shop requires in its own words,
 * and who ticked each.
 */
export function boxesOf(context: PlanContext): readonly Box[] {
  const { engine, registry, state } = context;
  const untested = untestedShaft(context);
  const usual = [
    ...(untested === undefined ? [] : [boxOfTest(untested)]),
    ...unstatedJoints(engine, registry).map((joint) => `${joint} ${BY_THE_MANUAL}`),
    ...(wasOpened(context) ? sundriesLeft(context).map((what) => `${what} ${RENEWED}`) : []),
    ...gasketBox(context),
    ...USUAL,
  ];
  const leftOut = new Map(leftOutOf(state.rows, engine.document.layout).map((each) => [boxOf(each), each]));
  const known = [...usual, ...leftOut.keys()];
  const required = [...leftOut.keys(), ...engine.planning.required.map(({ what }) => what)];
  const confirmed = [engine.document.handedOver, ...state.run.map(({ handedOver }) => handedOver)].flatMap(
    (each) => each.confirmed,
  );
  const by = (what: string): string | undefined =>
    confirmed.findLast((each) => plainName(each.what) === plainName(what))?.by;
  const isIn = (what: string): boolean => required.some((each) => plainName(each) === plainName(what));
  const own = required.filter((what) => !known.some((each) => plainName(each) === plainName(what)));
  return [...known, ...own].map((what) => ({
    what,
    isRequired: isIn(what),
    by: by(what),
    leftOut: leftOut.get(what)?.what,
  }));
}

const BY_THE_MANUAL = "tightened by the maker's manual";
const LEFT_OUT = 'left out on purpose';
const RENEWED = 'renewed';
const FITTED = 'fitted';

/** Which gasket goes in is nowhere to be read once the head is on: the box goes when a session states its code. */
function gasketBox(context: PlanContext): readonly string[] {
  const { gasket, count = 1, isStated } = gasketFit(context) ?? {};
  if (gasket === undefined || isStated === true) return [];
  const thick = gasket.thickness === undefined ? '' : `, ${thicknessText(gasket.thickness, context.engine)}`;
  return [`${thicknessCalled('gaskets', count)} ${gasket.code}${thick}, ${FITTED}`];
}

/** A box that goes once a document or a reading takes its place: what was ticked before is still known. */
export const isPassingBox = (what: string): boolean => {
  const name = plainName(what);
  return (
    name.startsWith(LEFT_OUT) ||
    name.startsWith(CRACK_TESTED) ||
    name.endsWith(BY_THE_MANUAL) ||
    (name.startsWith(thicknessCalled('gaskets', 1)) && name.endsWith(FITTED)) ||
    SUNDRIES.some((each) => name === `${each} ${RENEWED}`)
  );
};

const boxOf = ({ what, reason, stage }: LeftOut): string => `${LEFT_OUT} at ${stage}: ${what}: ${reason}`;

/** Required, and ticked by nobody yet. */
export const openBoxes = (boxes: readonly Box[]): readonly string[] =>
  boxes.filter(isOpenBox).map(({ what }) => what);

export const isOpenBox = ({ isRequired, by }: Box): boolean => isRequired && by === undefined;
