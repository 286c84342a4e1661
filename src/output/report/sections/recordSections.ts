import type { Finding } from '../../../checks/finding.ts';
import type { EngineReport, StateReport } from '../../../checks/judge/report.ts';
import { followUpText } from '../../../checks/open/followUps.ts';
import { leavesOf } from '../../../checks/value/route.ts';
import type { Engine } from '../../../documents/assemble.ts';
import { plural } from '../../../quantity/words.ts';
import { type Column, items, type SheetSection, section, table } from '../sheet.ts';
import { concessionRows } from './concessionRows.ts';
import { fittedRows, workRows } from './workRows.ts';

/** What the check says, word for word; remarks folded. */
export function findingsSection({ findings }: StateReport): readonly SheetSection[] {
  const remarks = findings.filter(({ severity }) => severity === 'remark');
  const columns = ['', 'what', 'where', 'code'];
  return section(
    'What the check says',
    table('errors and warnings', columns, findings.filter((each) => !remarks.includes(each)).map(findingRow)),
    table('remarks', columns, remarks.map(findingRow), plural(remarks.length, 'remark')),
  );
}

const findingRow = ({ severity, message, place, code }: Finding): readonly string[] => [
  severity,
  message,
  `${place.path}:${place.line}`,
  code,
];

/** Small, complete, last: where it comes from, with what it was measured, what was done. */
export const recordSections = (report: EngineReport, state: StateReport): readonly SheetSection[] => [
  ...section(
    'Found, done and fitted',
    table('found', ['on', 'what', 'decided', 'by', 'session'], foundRows(state)),
    table('work', ['work', 'on', 'session'], workRows(state.run)),
    table('fitted, replaced and machined', ['part', 'what', 'session'], fittedRows(state.run)),
  ),
  ...section(
    'Accepted deviations',
    table('concessions', CONCESSION_COLUMNS, concessionRows(state.run, 'shop')),
    items('list', openPromises(report)),
  ),
  ...section(
    'Record',
    table('sessions', ['session', 'by', 'hours', 'file'], sessionRows(report)),
    table(
      'instruments',
      ['instrument', 'type', 'calibrated', 'due', ''],
      instrumentRows(report.engine, state),
    ),
    table('limits', ['document', 'source'], limitRows(report.engine)),
  ),
];

export const CONCESSION_COLUMNS: readonly (string | Column)[] = [
  'what',
  'up to',
  'reason',
  'decided by',
  'agreed',
  { title: 'signature', align: 'left', isRoom: true },
];

const openPromises = ({ followUps }: EngineReport): readonly string[] =>
  followUps
    .filter(({ state }) => state === 'open')
    .map(({ followUp }) => `still to be measured: ${followUpText(followUp)}`);

const foundRows = ({ run }: StateReport): readonly (readonly string[])[] =>
  run.flatMap(({ observations, stage, date }) =>
    observations.map(({ on, is, remedy, by, photos }) => [
      on.join(', '),
      [is, ...(photos.length === 0 ? [] : [`photographs: ${photos.join(', ')}`])].join('; '),
      remedy ?? '',
      by ?? '',
      `${stage} ${date}`,
    ]),
  );

const sessionRows = ({ engine }: EngineReport): readonly (readonly string[])[] =>
  engine.sessions.map(({ stage, date, by, hours, path }) => [
    `${stage} ${date}`,
    by ?? '',
    hours === undefined ? '' : hours.written,
    path,
  ]);

/** Those that stand behind what is shown, and whether they were due on the day of the last session. */
function instrumentRows(
  { instruments }: Engine,
  { rows, session, tightened }: StateReport,
): readonly (readonly string[])[] {
  const used = new Set([
    ...rows.flatMap(({ routes }) =>
      routes.flatMap(({ route }) => leavesOf(route).flatMap((leaf) => leaf.with)),
    ),
    ...tightened.flatMap((log) => log.with?.name ?? []),
  ]);
  return [...used].sort().map((id) => {
    const known = instruments.get(id);
    if (known === undefined) return [id, 'not in the register', '', '', 'its error is assumed'];
    const { type, calibrated = '', due } = known;
    const isDue = due !== undefined && due < session.date;
    return [id, type, calibrated, due ?? 'not stated', isDue ? `was due before ${session.date}` : ''];
  });
}

const limitRows = ({ limits }: Engine): readonly (readonly string[])[] =>
  limits.map(({ path, source }) => [path, source ?? 'no source stated']);
