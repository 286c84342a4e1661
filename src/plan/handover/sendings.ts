import { type Finding, finding } from '../../checks/finding.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import { UNKNOWN_WORK } from '../../checks/open/ofPlan.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Sent } from '../../documents/planning/handedOver.ts';
import { workedOn } from '../../documents/planning/namedWork.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { relateOne } from '../../layout/relate.ts';
import { type Carried, carriedPart } from './carriedPart.ts';

export const sendings = (engine: Engine): readonly Sent[] =>
  [engine.document, ...engine.sessions].flatMap(({ handedOver }) => handedOver.sent);

/** Those of one part, by any of its names: `rods`, `rod 3`, `crankshaft with its gear`. */
export const sendingsOf = (carried: Carried, engine: Engine): readonly Sent[] =>
  sendings(engine).filter((sent) => isSent(sent, carried, engine));

const isSent = ({ part: words, parts }: Sent, carried: Carried, engine: Engine): boolean =>
  parts.length > 0
    ? parts.some((each) => isOf(each, carried, engine))
    : words.toLowerCase().includes(carried.part.label);

/** Whether what is said of a part is said of the one that is carried. */
export const isOf = (
  { part: said, positions }: PartAt,
  { part, at }: Carried,
  { parts, document: { layout } }: Engine,
): boolean =>
  parts.within(part).includes(said) &&
  (at === undefined ||
    positions.length === 0 ||
    positions.some((position) => relateOne(layout, position, at.family) === at));

/** Work that is ordered on a part of the engine with something that is none: no page would say where that part is. */
export const strangeSendings = (engine: Engine, { run }: Pick<StateReport, 'run'>): readonly Finding[] =>
  [engine.document, ...run]
    .flatMap(({ handedOver }) => handedOver.sent)
    .flatMap((sent) => {
      const ordered = sent.work.find(({ parts }) => parts.length > 0);
      const carried =
        ordered && carriedPart({ part: workedOn(ordered, engine.parts)[0]?.part }, engine.parts);
      if (ordered === undefined || carried === undefined || sent.parts.length > 0) return [];
      if (engine.parts.all.some(({ label }) => sent.part.toLowerCase().includes(label))) return [];
      const message = `sent: ${sent.part} is no part of the engine, and ${ordered.name} is done on the ${carried.label}; write \`part: ${carried.label}\``;
      return [finding(UNKNOWN_WORK, sent.place, message)];
    });
