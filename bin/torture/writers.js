import { besides, makeFile, notesIn, startAppender } from './appender.js';

const WRITERS = 8;

/** All into one session at once. */
export async function writers(part) {
  const folder = makeFile(part.folder);
  const count = part.times(50);
  const all = await Promise.all(
    Array.from({ length: WRITERS }, (_, writer) => startAppender(folder, `w${writer}`, count).ended),
  );
  const notes = notesIn(folder) ?? [];
  const saved = all.flatMap((each) => each.saved);
  part.tried += WRITERS * count;
  part.met += saved.length;
  const lost = saved.filter((note) => !notes.includes(note));
  if (lost.length > 0) part.wrong.push(`${lost.length} acknowledged readings are lost`);
  if (notes.length !== WRITERS * count)
    part.wrong.push(`${notes.length} of ${WRITERS * count} stand in the session`);
  for (const { code, complaint } of all) if (code !== 0) part.wrong.push(`exit ${code}: ${complaint}`);
  if (besides(folder).length > 0) part.wrong.push(`left ${besides(folder)}`);
}
