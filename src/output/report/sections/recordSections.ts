import type { Finding } from '../../../checks/finding.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import { openFollowUpText } from '../../../checks/open/followUps.ts';
import { leavesOf } from '../../../checks/value/route.ts';
import { staysIn } from '../../../compare/parts/stays.ts';
import type { Engine } from '../../../documents/assemble.ts';
import type { SessionDocument } from '../../../documents/session/session.ts';
import { plural } from '../../../quantity/words.ts';
import type { Links } from '../links.ts';
import {
  type Column,
  items,
  type Piece,
  type SheetCell,
  type SheetSection,
  section,
  table,
} from '../sheet.ts';
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
export const recordSections = (
  report: EngineReport,
  state: StateReport,
  links: Links,
): readonly SheetSection[] => [
  ...section(
    'Found, done and fitted',
    table('found', ['on', 'what', 'decided', 'by', 'session'], foundRows(state, links)),
    items('text', state.run.some(hasPhotos) ? [PHOTO_CAUTION] : []),
    table('work', ['work', 'on', 'session'], workRows(state.run, 'shop')),
    table('fitted, replaced and machined', ['part', 'what', 'session'], fittedRows(state.run, 'shop')),
    table('parts by their marks', ['part', 'mark', 'from', 'until'], markRows(report, links)),
  ),
  ...section(
    'Accepted deviations',
    table('concessions', CONCESSION_COLUMNS, concessionRows(state.run, 'shop')),
    items(
      'list',
      state.findings.flatMap(({ isAccepted, message }) => (isAccepted === true ? [message] : [])),
    ),
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

const openPromises = ({ engine, followUps }: EngineReport): readonly string[] =>
  followUps
    .filter(({ state }) => state === 'open')
    .map((each) => `still to be measured: ${openFollowUpText(each, unitsFor(engine))}`);

const PHOTO_CAUTION =
  'A photograph may tell where, when, by whom and with what it was taken: look at what is in the file, or take it out, before it is handed on.';

const hasPhotos = ({ observations }: SessionDocument): boolean =>
  observations.some(({ photos }) => photos.length > 0);

const foundRows = ({ run }: StateReport, links: Links): readonly (readonly SheetCell[])[] =>
  run.flatMap(({ observations, stage, date }) =>
    observations.map(({ on, is, remedy, by, photos }) => [
      on.join(', '),
      photos.length === 0 ? is : [{ text: `${is}; photographs: ` }, ...photoPieces(photos, links)],
      remedy ?? '',
      by ?? '',
      `${stage} ${date}`,
    ]),
  );

const photoPieces = (photos: readonly string[], { photo }: Links): readonly Piece[] =>
  photos.flatMap((text, index) => [...(index === 0 ? [] : [{ text: ', ' }]), { text, to: photo(text) }]);

/** What an engine came with is there from the beginning. */
const markRows = ({ engine, registry }: EngineReport, { part }: Links): readonly (readonly SheetCell[])[] =>
  staysIn({ engine, registry }).map(({ name, mark, since, until }) => [
    name,
    [{ text: mark, to: part(name, mark) }],
    since?.date ?? '',
    until?.date ?? '',
  ]);

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
