import type { PlannedBlock } from '../../bench/plan.ts';
import { fillIn } from '../../bench/record/fillIn.ts';
import type { RecordStart } from '../../bench/record/journalText.ts';
import { openBlocks } from '../../bench/record/openPlaces.ts';
import type { Taken } from '../../bench/record/state.ts';
import { writtenBlocks } from '../../bench/record/writtenBlocks.ts';
import { sessionContext } from '../../bench/sessionContext.ts';
import { sessionText } from '../../bench/sessionText.ts';
import { openDocument } from '../../documents/opened.ts';
import { readSession } from '../../documents/session/session.ts';
import { done, failed, type Outcome } from '../../shell/problem.ts';
import { thisProcess } from '../../shell/process/thisProcess.ts';
import { changeFile } from '../../shell/write/change.ts';
import { nodeFiles } from '../../shell/write/fileLayer.ts';
import type { BenchEngine } from './benchEngine.ts';

/** Writes the session as a person would have: a new one whole, into one that stands only what was taken. */
export function writeSession(
  opened: BenchEngine,
  path: string,
  { head, plan }: RecordStart,
  taken: ReadonlyMap<string, Taken>,
): Outcome<Uint8Array> {
  const destination = { files: nodeFiles, self: thisProcess, root: opened.root, path };
  return changeFile<string>(destination, (before) => {
    const text: Outcome<string> =
      before === undefined
        ? done(sessionText(head, [], writtenBlocks(plan.blocks, taken, opened.registry)))
        : filledText(opened, path, before, plan.blocks, taken);
    return text.ok ? done(Buffer.from(text.value)) : text;
  });
}

/** A session that stands, with readings put into it: it is read as it is now, whoever has changed it meanwhile. */
export function filledText(
  { engine, registry }: BenchEngine,
  path: string,
  before: Uint8Array,
  blocks: readonly PlannedBlock[],
  taken: ReadonlyMap<string, Taken>,
): Outcome<string> {
  const { root, source, problems: known } = openDocument(path, path, before);
  const problems = [...known];
  const context = { source, units: engine.units, problems };
  const session =
    root === undefined ? undefined : readSession(root, sessionContext(engine, registry), context);
  const [problem] = problems;
  if (session === undefined || root === undefined || problem !== undefined) {
    const message = `${path} is not sound: ${problem?.message ?? 'it cannot be read'}`;
    return failed('document', message, 'correct it, then call again');
  }
  return fillIn(source.text, openBlocks(root, session, engine, registry), taken, blocks, registry);
}
