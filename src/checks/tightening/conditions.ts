import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import { clampLoadOfTorque } from '../../torque/fasteners/clampLoad.ts';
import {
  isSameLubricant,
  isSameText,
  type Lubrication,
  lubricationNamed,
} from '../../torque/fasteners/lubrication.ts';
import { isPlaced } from '../../torque/fasteners/proofCheck.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { TighteningView } from './view.ts';

const LUBRICANT: FindingKind = {
  code: 'torque/lubricant',
  severity: 'warning',
  means: 'The threads were lubricated with something other than the sequence states.',
  matters:
    'At the same torque a slipperier thread clamps far more: paste in place of oil may take a bolt to yield.',
  usually:
    'Loosen the joint, clean the threads and do it again as stated; renew fasteners that went too far or must not be used twice.',
  example:
    'main caps: moly paste was used, and engine oil is stated: at the same torque about 1.5 times the clamp load (an estimate)',
};
const UNCONFIRMED: FindingKind = {
  code: 'torque/unconfirmed',
  severity: 'warning',
  means: 'Steps before or after tightening were not confirmed, or no pass was written down.',
  matters:
    'A dirty thread, or a cap that is turned round, is easy to find now, and does damage when the engine runs.',
  usually:
    'Look, and add the step to `confirmed` in the words of the sequence; `confirmed: all` stands for all of them.',
  example: 'main caps: not confirmed: caps in their places and facing forward',
};

export const conditionKinds: readonly FindingKind[] = [LUBRICANT, UNCONFIRMED];

/** What was under the heads, and what was looked at. */
export const conditionFindings = (view: TighteningView): readonly Finding[] => [
  ...lubricantFindings(view),
  ...unconfirmed(view),
];

/** What the log says the threads had, else what the sequence states. */
export function lubricationOf({ lubricant, document }: TighteningLog): Lubrication {
  const { joint } = document;
  return lubricant === undefined || isSameText(lubricant.name, joint.lubricant ?? '')
    ? joint.lubrication
    : lubricationNamed(lubricant.name);
}

function lubricantFindings({ log, session }: TighteningView): readonly Finding[] {
  const { joint, start } = log.document;
  if (log.lubricant === undefined || joint.lubricant === undefined) return [];
  const [used, stated] = [lubricationNamed(log.lubricant.name), lubricationNamed(joint.lubricant)];
  if (isSameLubricant(log.lubricant.name, joint.lubricant)) return [];
  const message = `${joint.sequence.joint}: ${log.lubricant.name} was used, and ${joint.lubricant} is stated${loadReported(used, stated)}`;
  return [finding(LUBRICANT, session.placeOf(log.lubricant.span), message, { limitPlace: start })];
}

/** How much more or less a bolt is expected to clamp with, where both can be placed. */
function loadReported(used: Lubrication, stated: Lubrication): string {
  if (!isPlaced(used) || !isPlaced(stated)) return '';
  const ratio = clampLoadOfTorque(1, 1, used).loadN / clampLoadOfTorque(1, 1, stated).loadN;
  return `: at the same torque about ${ratio.toFixed(1)} times the clamp load (an estimate)`;
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

function unconfirmed({ log, session }: TighteningView): readonly Finding[] {
  const { document, confirmed, passes } = log;
  const { before, after, joint } = document.joint.sequence;
  const place = session.placeOf(log.span);
  const limitPlace = document.start;
  const unwritten =
    passes === undefined
      ? [finding(UNCONFIRMED, place, `${joint}: no pass was written down`, { limitPlace })]
      : [];
  if (confirmed === 'all') return unwritten;
  const said = confirmed.map(plain);
  const missing = [...before, ...after].filter((step) => !said.includes(plain(step)));
  if (missing.length === 0) return unwritten;
  const steps = [...before, ...after].map(plain);
  const strange = confirmed.filter((each) => !steps.includes(plain(each)));
  const near = strange.flatMap((each) => didYouMean(each, missing) ?? []);
  const message = `${joint}: not confirmed: ${missing.join('; ')}${near[0] === undefined ? '' : ` (${near[0]})`}`;
  return [...unwritten, finding(UNCONFIRMED, place, message, { limitPlace })];
}
