import { type Finding, finding } from '../../checks/finding.ts';
import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import { RELEASED_OPEN } from '../../checks/open/ofPlan.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Confirmation } from '../../documents/planning/handedOver.ts';
import { plainName } from '../../documents/planning/namedWork.ts';
import { closingOf } from './closing.ts';
import { openTexts } from './openTexts.ts';

export interface Release extends Confirmation {
  /** The day of the session; empty where the engine document says it. */
  readonly date: string;
}

/** Who released an engine, the engine document first and then the sessions of its run. */
export const releasesOf = ({ document }: Engine, { run }: StateReport): readonly Release[] =>
  [document, ...run].flatMap((each) =>
    each.handedOver.confirmed
      .filter(({ what }) => plainName(what) === 'released')
      .map((confirmed) => ({ ...confirmed, date: 'date' in each ? each.date : '' })),
  );

/** How many of what is open a message names. */
const MOST_NAMED = 3;

/** A release while something is open has no effect: it is told where it stands, with what is open. */
export function releasedOpen(report: EngineReport, state: StateReport): readonly Finding[] {
  const releases = releasesOf(report.engine, state);
  if (releases.length === 0) return [];
  const open = openTexts(closingOf(report, state), report);
  if (open.length === 0) return [];
  const more = open.length > MOST_NAMED ? `; and ${open.length - MOST_NAMED} more` : '';
  const is = open.length === 1 ? '1 is open' : `${open.length} are open`;
  return releases.map(({ by, place }) =>
    finding(
      RELEASED_OPEN,
      place,
      `released by ${by}, and ${is}: ${open.slice(0, MOST_NAMED).join('; ')}${more}`,
    ),
  );
}
