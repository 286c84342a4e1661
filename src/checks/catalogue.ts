import { capabilityKinds } from './capability.ts';
import { concessionKinds } from './concessions.ts';
import { conditionKinds } from './conditions.ts';
import { distanceKinds } from './distances.ts';
import type { FindingKind } from './finding.ts';
import { followUpKinds } from './followUps.ts';
import { instrumentKinds } from './instruments.ts';
import { overdueKinds } from './overdue.ts';
import { ownFormulaKinds } from './ownFormulas.ts';
import { readingKinds } from './readings.ts';
import { scaleKinds } from './scale.ts';
import { sessionKinds } from './session.ts';
import { slipKinds } from './slips.ts';
import { spreadKinds } from './spread.ts';
import { stepLimitKinds } from './stepLimits.ts';
import { temperatureKinds } from './temperature.ts';
import { tighteningKinds } from './tightening.ts';
import { turningKinds } from './turning.ts';

/** Every kind of finding, by the file that makes it. Each has a golden case and a page of the documentation. */
export const findingKinds: readonly FindingKind[] = [
  ...readingKinds,
  ...ownFormulaKinds,
  ...concessionKinds,
  ...followUpKinds,
  ...turningKinds,
  ...instrumentKinds,
  ...overdueKinds,
  ...scaleKinds,
  ...capabilityKinds,
  ...distanceKinds,
  ...stepLimitKinds,
  ...temperatureKinds,
  ...conditionKinds,
  ...slipKinds,
  ...spreadKinds,
  ...sessionKinds,
  ...tighteningKinds,
];
