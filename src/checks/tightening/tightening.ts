import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { contradictionsIn } from '../../torque/fasteners/contradictions.ts';
import { proofCheck } from '../../torque/fasteners/proofCheck.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { conditionFindings, conditionKinds, lubricationOf } from './conditions.ts';
import { historyKinds } from './history.ts';
import { reachedFindings, reachedKinds } from './loggedTorque.ts';
import { followedFindings, followedKinds } from './passOrder.ts';
import { stretchFindings, stretchKinds } from './stretch.ts';
import { type TighteningView, tighteningView } from './view.ts';
import { wrenchFindings, wrenchKinds } from './wrench.ts';

const OVER_PROOF: FindingKind = {
  code: 'torque/over-proof',
  severity: 'error',
  means:
    'The torque of a sequence is expected to load its fasteners beyond their proof load, at the lubrication that was used. An estimate.',
  matters: 'Beyond proof a bolt stretches for good: the clamp load that it keeps is not known.',
  usually: 'Look for a slip in the torque, its unit, the grade or the lubricant; then ask the maker.',
  example: 'main caps, pass 3: 118 % of the proof load of 7/16-14 UNC, SAE J429 grade 5, at K 0.18 (oiled)',
};
const CONTRADICTION: FindingKind = {
  code: 'torque/contradiction',
  severity: 'warning',
  means:
    'The sequence contradicts itself: a torque and a stretch that cannot be met together, or a pass that comes too early.',
  matters: 'Nobody can follow all of it, and one of its figures is wrong.',
  usually: "Compare the document with the maker's manual.",
  example:
    'rod bolts, pass 2: torque and stretch contradict each other: together they need a nut factor of 0.01 to 0.03, which no lubricant gives',
};

export const tighteningKinds: readonly FindingKind[] = [
  ...reachedKinds,
  ...stretchKinds,
  ...followedKinds,
  ...conditionKinds,
  ...wrenchKinds,
  ...historyKinds,
  OVER_PROOF,
  CONTRADICTION,
];

/** What is to be said of the joints that were tightened in a session. */
export const tighteningFindings = (engine: Engine, session: SessionDocument): readonly Finding[] =>
  session.tightened.flatMap((log) => {
    const view = tighteningView(engine, session, log);
    return [
      ...reachedFindings(view),
      ...stretchFindings(view),
      ...followedFindings(view),
      ...conditionFindings(view),
      ...wrenchFindings(view),
      ...sequenceFindings(view),
    ];
  });

/** What is wrong with the sequence itself is reported where it was followed. */
function sequenceFindings({ log, session }: TighteningView): readonly Finding[] {
  const { joint, passPlaces } = log.document;
  const beyond = proofCheck(joint, lubricationOf(log));
  const report = (kind: FindingKind, pass: number, message: string): Finding =>
    finding(kind, session.placeOf(log.span), `${joint.sequence.joint}, pass ${pass}: ${message}`, {
      limitPlace: passPlaces[pass - 1],
    });
  return [
    ...(beyond === undefined ? [] : [report(OVER_PROOF, beyond.pass, beyond.message)]),
    ...contradictionsIn(joint).map(({ pass, message }) => report(CONTRADICTION, pass, message)),
  ];
}
