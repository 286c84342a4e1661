import type { EngineReport, StateReport } from '../../../checks/judge/report.ts';
import type { TighteningLog } from '../../../documents/tightening/tightened.ts';
import type { TorqueDocument } from '../../../documents/tightening/torque.ts';
import { tighteningCard } from '../../../torque/card.ts';
import type { Joint } from '../../../torque/joint.ts';
import { tightenedText } from '../../check/view/tighteningText.ts';
import { boltsLine } from '../../torque/cardWords.ts';
import { jointPicture } from '../../torque/jointPicture.ts';
import { passLines } from '../../torque/torqueWords.ts';
import { type Block, items, type SheetSection, section, table } from '../sheet.ts';

/** How each joint of the engine is tightened, and how it was. */
export function tighteningSections(
  { engine }: EngineReport,
  { tightened }: StateReport,
): readonly SheetSection[] {
  return engine.sequences.flatMap((document) =>
    section(
      `Tightening: ${document.joint.sequence.joint}`,
      jointBlocks(
        document,
        tightened.find((log) => log.document.name === document.name),
      ),
    ),
  );
}

function jointBlocks(document: TorqueDocument, log: TighteningLog | undefined): readonly Block[] {
  const { joint } = document;
  const picture = jointPicture(joint);
  return [
    ...items('text', [
      log === undefined
        ? `${joint.sequence.joint} (${document.name}): not tightened yet`
        : tightenedText(log),
      boltsLine(joint),
    ]),
    ...(picture === undefined ? [] : [{ kind: 'pictures', pictures: [picture] } as const]),
    ...table('passes', ['pass', 'do', 'amount', 'other units'], passRows(joint)),
    ...items('list', log === undefined ? [] : loggedTexts(log)),
    ...items('text', [`source: ${joint.source}`, ...(joint.note === undefined ? [] : [joint.note])]),
  ];
}

function passRows(joint: Joint): readonly (readonly string[])[] {
  const carded = tighteningCard(joint, {});
  if ('problem' in carded) return [];
  const units = { torque: joint.torqueUnit, length: joint.lengthUnit };
  return carded.card.passes.flatMap((pass) =>
    passLines(pass, units).map(({ does, amount, converted }, index) => [
      index === 0 ? `${pass.pass}` : '',
      does,
      amount,
      converted,
    ]),
  );
}

/** What was written down at the bench: who confirmed what, and the figures of each fastener. */
const loggedTexts = ({ lubricant, confirmed, passes }: TighteningLog): readonly string[] => [
  ...(lubricant === undefined ? [] : [`lubricant used: ${lubricant.name}`]),
  ...(confirmed === 'all'
    ? ['all confirmed']
    : confirmed.length > 0
      ? [`confirmed: ${confirmed.join('; ')}`]
      : []),
  ...(passes ?? []).flatMap(({ values, leftOut }, index) => [
    ...(values.size === 0
      ? []
      : [`pass ${index + 1}: ${[...values].map(([name, { written }]) => `${name} ${written}`).join(', ')}`]),
    ...(leftOut.length === 0 ? [] : [`pass ${index + 1}: left out ${leftOut.join(', ')}`]),
  ]),
];
