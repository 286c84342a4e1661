import type { StateReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import { plainName } from '../../documents/planning/handedOver.ts';
import type { Status } from './sheet.ts';

/** `confirmed: [{ what: released, by: NAME }]` in a session of the run releases it on that session's day. */
export function statusOf(engine: Engine, { run }: StateReport, openCount: number): Status {
  if (openCount > 0) return { isOpen: true, text: 'NOT RELEASED' };
  const released = run.flatMap(({ handedOver, date }) =>
    handedOver.confirmed.filter(({ what }) => plainName(what) === 'released').map(({ by }) => ({ by, date })),
  );
  const last = released.at(-1) ?? byEngine(engine);
  return last === undefined
    ? { isOpen: false, text: 'Ready to close up, not yet released' }
    : { isOpen: false, text: `Released by ${[last.by, last.date].filter(Boolean).join(', ')}` };
}

const byEngine = ({ document }: Engine): { readonly by: string; readonly date: string } | undefined => {
  const said = document.handedOver.confirmed.find(({ what }) => plainName(what) === 'released');
  return said && { by: said.by, date: '' };
};
