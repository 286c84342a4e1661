import { join } from 'node:path';
import { besides, makeFile, notesIn, startAppender } from './appender.js';

const SIGNALS = ['SIGKILL', 'SIGINT', 'SIGTERM'];
const EXITS = { SIGKILL: null, SIGINT: 130, SIGTERM: 143 };

/** Kills the appender at some moment after its first reading, so that the signal meets writing and not its start. */
export async function killedAppender(part) {
  let folder = '';
  const acknowledged = [];
  for (let run = 0; run < part.times(240); run++) {
    // A new file now and then, or reading it would soon take all the time.
    if (run % 25 === 0) {
      folder = makeFile(join(part.folder, `${run}`));
      acknowledged.length = 0;
    }
    const signal = SIGNALS[run % SIGNALS.length];
    const { saved, code, complaint } = await appendAndKill(folder, `r${run}`, signal);
    acknowledged.push(...saved);
    part.tried++;
    part.met += saved.length > 0 ? 1 : 0;
    const notes = notesIn(folder);
    const lost = acknowledged.filter((note) => !notes?.includes(note));
    if (notes === undefined) part.wrong.push(`${signal}: the file is torn`);
    else if (lost.length > 0) part.wrong.push(`${signal}: ${lost.length} acknowledged readings are lost`);
    if (complaint !== '') part.wrong.push(`${signal}: ${complaint.trim()}`);
    if (code !== EXITS[signal]) part.wrong.push(`${signal}: exit ${code}`);
    if (signal !== 'SIGKILL' && besides(folder).length > 0)
      part.wrong.push(`${signal}: left ${besides(folder)}`);
  }
}

async function appendAndKill(folder, name, signal) {
  let hasBegun = false;
  const { child, ended } = startAppender(folder, name, 1000, () => {
    if (!hasBegun) setTimeout(() => child.kill(signal), Math.random() * 60);
    hasBegun = true;
  });
  return ended;
}
