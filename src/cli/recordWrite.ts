import { fillIn } from '../bench/record/fillIn.ts';
import type { RecordStart } from '../bench/record/journalText.ts';
import { openBlocks } from '../bench/record/openPlaces.ts';
import type { RecordState } from '../bench/record/state.ts';
import { writtenBlocks } from '../bench/record/writtenBlocks.ts';
import { sessionText } from '../bench/sessionText.ts';
import { openDocument } from '../documents/opened.ts';
import { readSession } from '../documents/session.ts';
import { changeFile } from '../shell/change.ts';
import { nodeFiles } from '../shell/fileLayer.ts';
import { done, failed, type Outcome } from '../shell/problem.ts';
import { thisProcess } from '../shell/thisProcess.ts';
import type { OpenedEngine } from './openEngine.ts';

/** Writes the session as a person would have: a new one whole, into one that stands only what was taken. */
export function writeSession(
  { root, engine, registry }: OpenedEngine,
  path: string,
  { head, plan }: RecordStart,
  { taken }: RecordState,
): Outcome<Uint8Array> {
  const destination = { files: nodeFiles, self: thisProcess, root, path };
  return changeFile<string>(destination, (before) => {
    if (before === undefined) {
      return done(Buffer.from(sessionText(head, [], writtenBlocks(plan.blocks, taken, registry))));
    }
    const opened = openDocument(path, path, before);
    const problems = [...opened.problems];
    const context = { source: opened.source, units: engine.units, problems };
    const { layout } = engine.document;
    const session =
      opened.root === undefined
        ? undefined
        : readSession(opened.root, { measures: registry, layout, grids: engine.grids }, context);
    const [problem] = problems;
    if (session === undefined || opened.root === undefined || problem !== undefined) {
      return failed(
        'document',
        `${path} is not sound: ${problem?.message ?? 'it cannot be read'}`,
        'mend it and run tenths record again',
      );
    }
    const open = openBlocks(opened.root, session, engine, registry);
    const after = fillIn(opened.source.text, open, taken, plan.blocks, registry);
    return after.ok ? done(Buffer.from(after.value)) : after;
  });
}
