import type { FindingKind } from './finding.ts';
import { capabilityKinds } from './findings/capability.ts';
import { concessionKinds } from './findings/concessions.ts';
import { conditionKinds } from './findings/conditions/conditions.ts';
import { distanceKinds } from './findings/distances.ts';
import { emptySessionKinds } from './findings/emptySession.ts';
import { fileKinds } from './findings/files.ts';
import { instrumentKinds } from './findings/instruments.ts';
import { overdueKinds } from './findings/overdue.ts';
import { ownFormulaKinds } from './findings/ownFormulas.ts';
import { ownIdKinds } from './findings/ownIds.ts';
import { readingKinds } from './findings/readings.ts';
import { scaleKinds } from './findings/resolutionAndRange.ts';
import { spreadKinds } from './findings/spread.ts';
import { stepLimitKinds } from './findings/stepLimits.ts';
import { temperatureKinds } from './findings/temperature.ts';
import { turningKinds } from './findings/turning.ts';
import { unagreedKinds } from './findings/unagreed.ts';
import { gradeKinds } from './grades/gradeFindings.ts';
import { statedSizeKinds } from './grades/statedSizes.ts';
import { unlikeFitKinds } from './grades/unlikeFits.ts';
import { partConflictKinds } from './history/partConflict.ts';
import { sessionKinds } from './judge/session.ts';
import { followUpKinds } from './open/followUps.ts';
import { foundKinds } from './open/found.ts';
import { planKinds } from './open/ofPlan.ts';
import { unstatedSourceKinds } from './open/unstatedSources.ts';
import { slipKinds } from './slips/implausible.ts';
import { impossibleKinds } from './slips/impossible.ts';
import { tighteningKinds } from './tightening/tightening.ts';

/** Every kind of finding, by the file that makes it. Each has a golden case and a page of the documentation. */
export const findingKinds: readonly FindingKind[] = [
  ...readingKinds,
  ...ownFormulaKinds,
  ...ownIdKinds,
  ...concessionKinds,
  ...followUpKinds,
  ...foundKinds,
  ...turningKinds,
  ...instrumentKinds,
  ...overdueKinds,
  ...scaleKinds,
  ...capabilityKinds,
  ...distanceKinds,
  ...stepLimitKinds,
  ...temperatureKinds,
  ...conditionKinds,
  ...gradeKinds,
  ...unlikeFitKinds,
  ...statedSizeKinds,
  ...slipKinds,
  ...impossibleKinds,
  ...spreadKinds,
  ...unagreedKinds,
  ...planKinds,
  ...fileKinds,
  ...partConflictKinds,
  ...unstatedSourceKinds,
  ...sessionKinds,
  ...emptySessionKinds,
  ...tighteningKinds,
];
