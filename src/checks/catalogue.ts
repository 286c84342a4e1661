import { concessionKinds } from './concessions.ts';
import type { FindingKind } from './finding.ts';
import { followUpKinds } from './followUps.ts';
import { instrumentKinds } from './instruments.ts';
import { readingKinds } from './readings.ts';
import { sessionKinds } from './session.ts';
import { turningKinds } from './turning.ts';

/** Every kind of finding, by the file that makes it. Each has a golden case and a page of the documentation. */
export const findingKinds: readonly FindingKind[] = [
  ...readingKinds,
  ...concessionKinds,
  ...followUpKinds,
  ...turningKinds,
  ...instrumentKinds,
  ...sessionKinds,
];
