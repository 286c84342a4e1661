import type { StateReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type Closing, openCount } from '../../plan/closing/closing.ts';
import { releasesOf } from '../../plan/closing/released.ts';
import type { Status } from './sheet.ts';

/** `confirmed: [{ what: released, by: NAME }]` in a session of the run releases it on that session's day. */
export function statusOf(engine: Engine, state: StateReport, closing: Closing): Status {
  if (openCount(closing) > 0) return { isOpen: true, text: 'NOT RELEASED' };
  const last = releasesOf(engine, state).at(-1);
  return last === undefined
    ? { isOpen: false, text: 'Ready to close up, not yet released' }
    : { isOpen: false, text: `Released by ${[last.by, last.date].filter(Boolean).join(', ')}` };
}
