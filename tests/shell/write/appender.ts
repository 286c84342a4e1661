import { appendItem } from '../../../src/documents/writing/splice.ts';
import { done } from '../../../src/shell/problem.ts';
import { watchSignals } from '../../../src/shell/process/signals.ts';
import { thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { changeFile } from '../../../src/shell/write/change.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';

/**
 * A program for the tests of writing: appends readings `NAME-1`, `NAME-2`, … to a session and says each on stdout once
 * it is saved. Arguments: folder, path, name, count, and how long to take over each between reading and writing; where it
 * takes long, it says on stderr when it last looked at the session and when it had replaced it, in ns of the system's clock
 * that is never set. Ends with 1 at the first refusal, else as a signal asks, else with 0.
 */
const [folder = '', path = '', name = '', count = '0', pauseMs = '0'] = process.argv.slice(2);
const watch = watchSignals();

/** When the session was last opened after the new text was staged. */
let lookedAt: bigint | undefined;
const timedFiles: FileLayer = {
  ...nodeFiles,
  createNew: (created, mode) => {
    lookedAt = undefined;
    return nodeFiles.createNew(created, mode);
  },
  openToRead: (opened) => {
    if (opened.endsWith(`/${path}`)) lookedAt = process.hrtime.bigint();
    return nodeFiles.openToRead(opened);
  },
  rename: (from, to) => {
    nodeFiles.rename(from, to);
    if (lookedAt !== undefined && pauseMs !== '0')
      process.stderr.write(`looked at ${lookedAt}, replaced at ${process.hrtime.bigint()}\n`);
  },
};

function append(note: string): boolean {
  const destination = { files: timedFiles, self: thisProcess, root: folder, path };
  const result = changeFile(
    destination,
    (before) => {
      thisProcess.sleepMs(Number(pauseMs));
      const added = appendItem(
        Buffer.from(before ?? []).toString('utf8'),
        ['readings'],
        `measure: cylinder_bore\nvalue: 4.1250\nnote: ${note}`,
      );
      return added.ok ? done(Buffer.from(added.value.text)) : added;
    },
    100_000,
  );
  process[result.ok ? 'stdout' : 'stderr'].write(`${result.ok ? note : result.problem.message}\n`);
  return result.ok;
}

async function appendAll(): Promise<number> {
  for (let number = 1; number <= Number(count); number++) {
    if (!append(`${name}-${number}`)) return 1;
    // Signals are noticed only between two turns of the event loop.
    await new Promise((next) => setImmediate(next));
    const asked = watch.exitCode();
    if (asked !== undefined) return asked;
  }
  return 0;
}

appendAll().then((code) => {
  process.exitCode = code;
  watch.stop();
});
