import { isState, type ReportedSession, type StateReport } from '../../checks/judge/report.ts';
import { hasChanges, verdictChanges } from '../../compare/verdictChanges.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { answerLines } from '../../output/check/checkText.ts';
import { diagnosticsLines, notJudgedLines } from '../../output/check/runText.ts';
import { changedLines, settledLines, verdictChangeLines } from '../../output/check/watchText.ts';
import { type Line, withGaps } from '../../output/escape/line.ts';
import { answerText } from '../../output/state/answerText.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { isDocumentName, nameOf } from '../../shell/discover/entry.ts';
import type { JudgedFolder } from './checkEngine.ts';
import type { Look } from './look.ts';

/** What is otherwise than before, below the documents that were changed; nothing where none was. */
export function newsLines(
  before: Look,
  after: Look,
  changed: readonly string[],
  style: TextStyle,
): readonly Line[] {
  const names = changed.filter((path) => isDocumentName(nameOf(path)));
  const blocks = [
    ...documentBlocks(before, after, style),
    ...[...after.engines].flatMap(([folder, engine]) =>
      engineBlocks(folder, before.engines.get(folder), engine, style),
    ),
  ].filter(({ length }) => length > 0);
  if (names.length === 0 && blocks.length === 0) return [];
  return ['', ...changedLines(names, blocks.length > 0, style), ...withGaps(blocks)];
}

function documentBlocks(before: Look, after: Look, style: TextStyle): readonly (readonly Line[])[] {
  const [was, is] = [before, after].map(({ diagnostics }) => new Set(diagnostics.map(textOf)));
  const fresh = after.diagnostics.filter((each) => !was?.has(textOf(each)));
  const gone = before.diagnostics.filter((each) => !is?.has(textOf(each)));
  return [diagnosticsLines(fresh, after.texts, style), settledLines(gone.map(textOf), style)];
}

/** Without line and column, which move with every line that is put in above. */
const textOf = ({ place, message }: Diagnostic): string => `${place.path}: ${message}`;

function engineBlocks(
  folder: string,
  before: JudgedFolder | undefined,
  after: JudgedFolder,
  style: TextStyle,
): readonly (readonly Line[])[] {
  const { judged } = after;
  if (judged === undefined)
    return before?.judged === undefined ? [] : [notJudgedLines(folder, after.faulty, style)];
  if (!canBeHeldAgainst(after, before)) return [];
  return judged.chosen.flatMap((shown) => {
    const earlier = before?.judged?.chosen.find((each) => isSameSubject(each, shown));
    const changes = verdictChanges(earlier ?? { rows: [], findings: [] }, shown);
    if (!hasChanges(changes)) return [];
    const heading = isState(shown)
      ? answerLines(judged.report.engine.document.name, answerText(shown, judged.report.followUps), style)
      : [shown.session.name];
    // Of what was not there before every verdict is new: what is wrong is enough.
    const reported = earlier === undefined ? { ...changes, verdicts: [] } : changes;
    return [[...heading, ...verdictChangeLines(reported, style)]];
  });
}

const isSameSubject = (a: ReportedSession | StateReport, b: ReportedSession | StateReport): boolean =>
  isState(a) ? isState(b) : !isState(b) && a.session.path === b.session.path;

/** What the next look is held against: of an engine that cannot be read whole for now, how it stood before. */
export const standingAfter = (before: Look, after: Look): Look => ({
  ...after,
  engines: new Map(
    [...after.engines].map(([folder, engine]) => {
      const earlier = before.engines.get(folder);
      return [folder, earlier === undefined || canBeHeldAgainst(engine, earlier) ? engine : earlier];
    }),
  ),
});

/** Half a session that is being typed has lost no readings. */
function canBeHeldAgainst({ judged }: JudgedFolder, before: JudgedFolder | undefined): boolean {
  if (judged === undefined) return false;
  const unread = before?.judged?.report.engine.notJudged;
  return unread === undefined || judged.report.engine.notJudged.every((path) => unread.includes(path));
}
