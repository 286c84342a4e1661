import { type Finding, type FindingKind, finding } from '../finding.ts';
import { aboutPass, passName } from './about.ts';
import { missedIn, repeatedIn, wantedBy } from './fasteners.ts';
import type { PlannedPass } from './passes.ts';
import { angleText, spanText, statedTorque, type TighteningView } from './view.ts';

const SKIPPED: FindingKind = {
  code: 'torque/skipped',
  severity: 'error',
  means: 'A pass of the sequence was not made, or did not reach every fastener.',
  matters: 'A joint that was not tightened in steps may stay crooked, and a bolt that was left out is loose.',
  usually:
    'If the pass was made, write it down. Else loosen the joint and tighten it again from the first pass; renew fasteners that must not be used twice.',
  example: 'main caps: pass 2, to 30 lbf ft, was not made',
};
const ORDER: FindingKind = {
  code: 'torque/order',
  severity: 'warning',
  means:
    'Fasteners or passes were tightened in another order than the sequence states, or in a pass that it does not have, or a pass was made once too often. It is a remark where a torque alone was applied again.',
  matters:
    'The order keeps caps square and presses gaskets evenly; in another order the first bolts lose load. A turn that is made again stretches a bolt further.',
  usually:
    'If only the log is wrong, correct it. Else loosen the joint and follow the order; renew fasteners that must not be used twice.',
  example: 'main caps: 2L was tightened as number 3, where the order has 2R',
};

export const followedKinds: readonly FindingKind[] = [SKIPPED, ORDER];

/** Whether the passes and the order of the sequence were followed. */
export const followedFindings = (view: TighteningView): readonly Finding[] =>
  view.log.passes === undefined
    ? orderFindings(view)
    : [
        ...skippedPasses(view),
        ...skippedFasteners(view),
        ...strayPasses(view),
        ...repeatedPasses(view),
        ...orderFindings(view),
      ];

const jointOf = ({ log }: TighteningView): string => log.document.joint.sequence.joint;
const passPlace = ({ log }: TighteningView, pass: number) => log.document.passPlaces[pass - 1];

const skippedPasses = (view: TighteningView): readonly Finding[] =>
  view.planned
    .filter((pass) => !view.matched.some(({ planned }) => planned === pass))
    .map((pass) =>
      finding(
        SKIPPED,
        view.session.placeOf(view.log.span),
        `${jointOf(view)}: pass ${pass.pass}, ${passText(pass, view)}, was not made`,
        { limitPlace: passPlace(view, pass.pass) },
      ),
    );

function passText({ steps }: PlannedPass, { log }: TighteningView): string {
  const { torqueUnit, lengthUnit } = log.document.joint;
  const action = steps[0]?.action;
  switch (action?.kind) {
    case 'to':
      return `to ${spanText(action.torque, torqueUnit)}`;
    case 'check':
      return `the check at ${spanText(action.torque, torqueUnit)}`;
    case 'turn':
      return `a turn of ${angleText(action.angle)}`;
    case 'stretch':
      return `a stretch of ${spanText(action.stretch, lengthUnit)}`;
    default:
      return 'loosening';
  }
}

const skippedFasteners = (view: TighteningView): readonly Finding[] =>
  missedIn(view).map(({ planned, logged, fasteners }) => {
    const message = `${passName(view, planned.pass)}: ${fasteners.join(', ')} ${fasteners.length === 1 ? 'was' : 'were'} not reached`;
    const place = view.session.placeOf(logged.span);
    return aboutPass(SKIPPED, place, message, view, planned.pass, onlyOf(fasteners));
  });

const onlyOf = (fasteners: readonly string[]): string | undefined =>
  fasteners.length === 1 ? fasteners[0] : undefined;

/** A torque that is reached again does no more than the first time; a turn does. */
const repeatedPasses = (view: TighteningView): readonly Finding[] =>
  repeatedIn(view).map(({ planned, logged, fasteners }) => {
    const isTurn = logged.action.kind === 'turn';
    const where = fasteners.length < wantedBy(planned).length ? ` on ${fasteners.join(', ')}` : '';
    const message = `${jointOf(view)}: pass ${planned.pass}, ${passText(planned, view)}, was made again${where}${isTurn ? ': a turn adds to the one before it' : ''}`;
    const place = view.session.placeOf(logged.span);
    const reported = aboutPass(ORDER, place, message, view, planned.pass, onlyOf(fasteners));
    return isTurn ? reported : { ...reported, severity: 'remark' };
  });

function strayPasses(view: TighteningView): readonly Finding[] {
  return view.matched.flatMap(({ logged, planned, outOfOrder }) => {
    const place = view.session.placeOf(logged.span);
    if (planned === undefined) {
      const torque = statedTorque(logged);
      const what =
        torque === undefined
          ? `a pass to ${logged.action.kind}`
          : `a pass to ${spanText(torque, view.log.document.joint.torqueUnit)}`;
      return [
        finding(ORDER, place, `${jointOf(view)}: the sequence has no such pass: ${what}`, {
          limitPlace: view.log.document.start,
        }),
      ];
    }
    if (!outOfOrder) return [];
    const message = `${jointOf(view)}: pass ${planned.pass}, ${passText(planned, view)}, was done out of sequence`;
    return [finding(ORDER, place, message, { limitPlace: passPlace(view, planned.pass) })];
  });
}

/** Only an order that was stated or generated can be left; of fasteners as listed there is none. */
function orderFindings(view: TighteningView): readonly Finding[] {
  const { log, session } = view;
  const { sequence, orderFrom } = log.document.joint;
  if (log.order === undefined || orderFrom === 'listed') return [];
  const followed = log.order.map(({ name }) => name);
  const asked = sequence.order;
  const wrong = followed.findIndex((name, index) => name !== asked[index]);
  const at = wrong >= 0 ? wrong : followed.length;
  if (wrong < 0 && followed.length === asked.length) return [];
  const whose = orderFrom === 'generated' ? 'the generated order' : 'the order';
  const next = asked[at];
  const message =
    wrong < 0
      ? `${sequence.joint}: the order in the log ends before ${next}`
      : `${sequence.joint}: ${followed[at]} was tightened as number ${at + 1}, where ${whose} has ${next ?? 'nothing more'}`;
  return [
    finding(ORDER, session.placeOf(log.order[at]?.span ?? log.span), message, {
      limitPlace: log.document.start,
      ...(next === undefined ? {} : { fastener: followed[at] ?? next }),
    }),
  ];
}
