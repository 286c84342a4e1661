import { type EngineReport, type StateReport, unitsFor } from '../../checks/judge/report.ts';
import { openFollowUpText } from '../../checks/open/followUps.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { closingOf } from '../../plan/closing/closing.ts';
import { measuredSentence } from '../plan/handover/customerPage.ts';
import { customerReasons, leftOutSentences } from './customerReasons.ts';
import { factsOf, type Origin } from './facts.ts';
import { privately } from './privately.ts';
import { concessionRows } from './sections/concessionRows.ts';
import { CONCESSION_COLUMNS } from './sections/recordSections.ts';
import { sizesTable } from './sections/sizesTable.ts';
import { fittedRows, workRows } from './sections/workRows.ts';
import { everyReason, items, type Sheet, type SheetSection, section, table } from './sheet.ts';
import { BLANKS, CAUTIONS } from './shopSheet.ts';
import { statusOf } from './status.ts';

/**
 * What was found, done and agreed, for the person whose engine it is. Of this job alone: what others had done to the engine
 * before is theirs, and what may become of it is nobody's to promise.
 */
export function customerSheet(report: EngineReport, state: StateReport, origin: Origin): Sheet {
  const closing = closingOf(report, state);
  const reasons = customerReasons(closing, report);
  const status = statusOf(report.engine, state, closing);
  return {
    title: report.engine.document.name,
    about: 'what we found, and what we did',
    facts: factsOf(report, state, 'customer', origin, true),
    status,
    verdict: status.isOpen
      ? 'The work is not finished. What is still open is listed below.'
      : 'Nothing in our records is open.',
    reasons,
    sections: [
      ...everyReason(reasons),
      ...foundSection(report, state),
      ...section(
        'What we did',
        table('work', ['work', 'on', 'when'], workRows(state.run, 'customer')),
        table('fitted, replaced and machined', ['part', 'what', 'when'], fittedRows(state.run, 'customer')),
        items('list', seenTexts(state, true)),
      ),
      ...agreedSection(report, state),
      ...section(
        'What it measures now',
        items('text', [HOW_TO_READ]),
        sizesTable(state.rows, unitsFor(report.engine)),
        items('list', leftOutSentences(closing)),
      ),
      ...section(
        'What to do now',
        items('list', promised(report, state)),
        items('text', [BY_MANUAL]),
        items('blanks', BLANKS),
      ),
      ...section(
        'Handed over',
        items('blanks', ['for the shop: name, date, signature', 'for the customer: name, date, signature']),
      ),
    ],
    cautions: CAUTIONS,
  };
}

const HOW_TO_READ =
  'The number before a figure is its place, such as cylinder 1. New parts may lie anywhere between their limits; at the wear limit a part is used up.';

const BY_MANUAL = "Running in, the first oil change and tightening again go by the engine maker's manual:";

function foundSection({ engine, sessions }: EngineReport, state: StateReport): readonly SheetSection[] {
  const unitFor = unitsFor(engine);
  const teardown = sessions.filter(
    ({ session }) => session.stage === 'teardown' && state.run.includes(session),
  );
  const out = teardown.flatMap(({ rows }) =>
    rows
      .filter(({ judgement }) => judgement.verdict === 'out')
      .flatMap((row) => measuredSentence(row, unitFor)),
  );
  return section('What we found', items('list', [...seenTexts(state, false), ...out]));
}

/** What was seen; or what was decided of it, to keep a part or that another is in its place. */
const seenTexts = ({ run }: StateReport, isSettled: boolean): readonly string[] =>
  run.flatMap(({ observations }) =>
    observations
      .filter(({ remedy }) => (remedy === 'reuse') === isSettled)
      .flatMap(({ on, is }) => {
        const text = privately(is, 'customer');
        return text === undefined ? [] : [`${isSettled ? '' : 'Seen on '}${on.join(', ')}: ${text}.`];
      }),
  );

function agreedSection({ engine }: EngineReport, { run }: StateReport): readonly SheetSection[] {
  const agreed = [engine.document.handedOver, ...run.map(({ handedOver }) => handedOver)]
    .flatMap((each) => each.agreed)
    .map(
      ({ by, date, items: jobs }) =>
        `${[by, date].filter(Boolean).join(', ')}: ${jobs.map(({ name }) => name).join(', ')}`,
    );
  const accepted = concessionRows(run, 'customer');
  return section(
    'What you agreed to',
    items('list', agreed),
    items('text', accepted.length === 0 ? [] : ['Used as it is, though it lies beyond its limit:']),
    table('accepted deviations', CONCESSION_COLUMNS, accepted),
  );
}

/** What was promised with a concession of this job. */
const promised = ({ engine, followUps }: EngineReport, { run }: StateReport): readonly string[] =>
  followUps
    .filter(({ state, session }) => state === 'open' && isOf(session, run))
    .map((each) => `To be measured later: ${openFollowUpText(each, unitsFor(engine))}.`);

const isOf = (session: SessionDocument, run: readonly SessionDocument[]): boolean => run.includes(session);
