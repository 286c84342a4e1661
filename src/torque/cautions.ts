import type { ResolvedAction } from './plan.ts';

/** What decides which cautions fit a joint. */
export interface TighteningSituation {
  /** What is tightened, as the document names it: `main caps`, `cylinder head`. */
  readonly joint: string;
  readonly lubricant?: string;
  /** Whether the fasteners may be used again; `unstated` when the document does not say. */
  readonly reuse: 'once' | 'allowed' | 'unstated';
  readonly actions: ReadonlySet<ResolvedAction['kind']>;
  /** The order was generated from positions. */
  readonly generatedOrder: boolean;
  /** Neither the document nor positions give an order for several fasteners. */
  readonly unorderedFasteners: boolean;
  readonly adapter: boolean;
  readonly runOn: boolean;
  /** A clamp load is shown. */
  readonly estimate: boolean;
}

export interface Caution {
  readonly id: string;
  readonly text: string;
}

interface Rule {
  readonly id: string;
  /** When it is shown, in words. */
  readonly when: string;
  readonly applies: (situation: TighteningSituation) => boolean;
  readonly text: (situation: TighteningSituation) => string;
}

const rule = (id: string, when: string, applies: Rule['applies'], text: string | Rule['text']): Rule => ({
  id,
  when,
  applies,
  text: typeof text === 'string' ? () => text : text,
});

const HEAVY =
  /\b(cylinder )?heads?\b|\bcrank\w*|\bmain\b|\bflywheel|\bblock\b|\bcylinders?\b|\bgearbox|\bbell ?housing/i;
const SPRUNG = /\bspring|\bvalve (gear|train)|\brocker (arm|shaft|bracket)|\bdamper|\bpulley|\bclutch/i;
const OILED = /\bmains?\b|\brods?\b|\bbearings?\b|\bcrank\w*|\bcam\w*|\boil\b/i;

/** The usual workshop cautions (common practice, no source, but where one is named), in the order they are shown. */
export const CAUTION_RULES: readonly Rule[] = [
  rule(
    'manual-first',
    'always',
    () => true,
    "The engine maker's manual and a qualified engineer come first: these figures were supplied by the user.",
  ),
  rule(
    'generated-order',
    'the order was generated',
    ({ generatedOrder }) => generatedOrder,
    "The order was generated from where the fasteners stand: the maker's order wins.",
  ),
  rule(
    'no-order',
    'several fasteners and no order',
    ({ unorderedFasteners }) => unorderedFasteners,
    'No order is stated: find the one of the engine maker before you tighten.',
  ),
  rule(
    'lubricant-stated',
    'a lubricant is stated and a torque is reached',
    ({ lubricant, actions }) => lubricant !== undefined && usesTorque(actions),
    ({ lubricant }) => `Torques hold only for this lubricant and for clean, sound threads: ${lubricant}.`,
  ),
  rule(
    'lubricant-unstated',
    'no lubricant is stated and a torque is reached',
    ({ lubricant, actions }) => lubricant === undefined && usesTorque(actions),
    'No lubricant is stated: torques hold only for the thread condition their source meant. Find out which.',
  ),
  rule(
    'use-once',
    'the fasteners must not be used again',
    ({ reuse }) => reuse === 'once',
    'Fit new fasteners: these must not be used twice.',
  ),
  rule(
    'reuse-unstated',
    'a turn or a stretch is asked for and reuse is not stated',
    ({ reuse, actions }) => reuse === 'unstated' && (actions.has('turn') || actions.has('stretch')),
    'Fasteners tightened by angle or stretch are often for one use only: ask the maker before using them again.',
  ),
  rule(
    'mark-the-turn',
    'a turn is asked for',
    ({ actions }) => actions.has('turn'),
    'Mark each fastener before its turn. One that went too far is loosened fully and done again from the start, if its maker allows.',
  ),
  rule(
    'stretch-zero',
    'a stretch is asked for',
    ({ actions }) => actions.has('stretch'),
    'Measure each bolt slack first, at the same temperature and from the same points as tight.',
  ),
  rule(
    'adapter',
    'an adapter is used',
    ({ adapter }) => adapter,
    'The setting holds only with the hand on the middle of the grip and the adapter at the stated angle.',
  ),
  rule(
    'run-on',
    'run-on torque is added',
    ({ runOn }) => runOn,
    'Measure the run-on torque of each locknut anew, on the last turn before the faces meet (FAA AC 43.13-1B, 7-40).',
  ),
  rule(
    'estimate',
    'a clamp load is shown',
    ({ estimate }) => estimate,
    'Clamp load is an estimate: at one torque a single bolt may lie a quarter or more off. It is no reason to change a torque.',
  ),
  rule(
    'heavy',
    'the joint holds a heavy part',
    ({ joint }) => HEAVY.test(joint),
    'Heavy part: lift it with tackle rated for it and never reach under it while it hangs.',
  ),
  rule(
    'stored-energy',
    'the joint is near springs or pressed parts',
    ({ joint }) => SPRUNG.test(joint),
    'Stored energy: release springs and pressed parts slowly and stand clear of their path.',
  ),
  rule(
    'oil-before-start',
    'the joint belongs to a lubricated bearing',
    ({ joint }) => OILED.test(joint),
    'Before the first start, bring up oil pressure with the engine turned by hand or by a pump.',
  ),
];

/** The cautions that fit, in the order they are shown. */
export const cautionsFor = (situation: TighteningSituation): readonly Caution[] =>
  CAUTION_RULES.filter((each) => each.applies(situation)).map(({ id, text }) => ({
    id,
    text: text(situation),
  }));

const usesTorque = (actions: TighteningSituation['actions']): boolean =>
  actions.has('to') || actions.has('check');
