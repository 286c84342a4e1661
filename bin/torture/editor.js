import { spawn } from 'node:child_process';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { makeFile, notesIn, startAppender } from './appender.js';
import { answersIn, ENVIRONMENT, keptIn, makeShop, PROGRAM, SESSIONS, writtenIn } from './shop.js';

/** An editor, which knows of no lock, saves a session while a program adds to it: neither loses anything of the other. */
export async function editor(part) {
  for (let run = 0; run < part.times(250); run++) await editWhileAppending(part, run);
  for (let run = 0; run < part.times(10); run++) await editDuringEntry(part, run);
}

/** The editor has read the file before the append and saves at once when it sees one, or has saved before it begins. */
async function editWhileAppending(part, run) {
  const folder = makeFile(join(part.folder, `append-${run}`));
  const path = join(folder, 'a.yaml');
  const { ended } = startAppender(folder, 'x', 3);
  await pause(60 + Math.random() * 60);
  const before = readFileSync(path, 'utf8');
  const hadBegun = notesIn(folder)?.length ?? 0;
  const edited = before.replace('# taken', `# edited ${run}, taken`);
  saveAs(path, edited);
  const { saved, code, complaint } = await ended;
  const after = readFileSync(path, 'utf8');
  part.tried++;
  // What the program wrote between the editor's reading and its saving the editor itself has overwritten.
  part.met += hadBegun < 3 ? 1 : 0;
  if (!after.includes(`# edited ${run}`))
    part.wrong.push(`append ${run}: the edit is lost (exit ${code}) ${complaint}`);
  if (notesIn(folder) === undefined) part.wrong.push(`append ${run}: the file is torn`);
  if (code === 0 && saved.length !== 3) part.wrong.push(`append ${run}: success with ${saved.length} saved`);
}

/** As most editors do: a new file in place of the old one. */
function saveAs(path, text) {
  writeFileSync(`${path}~`, text);
  renameSync(`${path}~`, path);
}

/** The session is edited after a reading was taken and before it is written. */
async function editDuringEntry(part, run) {
  const folder = makeShop(join(part.folder, `entry-${run}`));
  const session = join(folder, SESSIONS, 'teardown.yaml');
  const words = [PROGRAM, 'record', '--session', 'teardown'];
  const child = spawn(process.execPath, words, { cwd: folder, env: ENVIRONMENT });
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text) => {
    said += text;
  });
  const ended = new Promise((end) => {
    child.on('close', end);
  });
  child.stdin.write('3.2478\n3.2477\n');
  while (answersIn(said) < 2 && child.exitCode === null) await pause(5);
  saveAs(session, readFileSync(session, 'utf8').replace('# throw alone', `# edited ${run}`));
  child.stdin.end('finish\n');
  const code = await ended;
  part.tried++;
  part.met++;
  const kept = [...keptIn(join(folder, SESSIONS, '.teardown.part')), ...writtenIn(session)];
  if (!readFileSync(session, 'utf8').includes(`# edited ${run}`))
    part.wrong.push(`entry ${run}: the edit is lost`);
  if (!['3.2478', '3.2477'].every((each) => kept.includes(each)))
    part.wrong.push(`entry ${run}: a reading is lost (exit ${code}): ${said}`);
}
