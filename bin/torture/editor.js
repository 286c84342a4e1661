import { spawn } from 'node:child_process';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { makeFile, notesIn, startAppender } from './appender.js';
import { answersIn, ENVIRONMENT, keptIn, makeShop, PROGRAM, SESSIONS, writtenIn } from './shop.js';

/** An editor, which knows of no lock, saves a session while a program adds to it: neither loses anything of the other. */
export async function editor(part) {
  for (let run = 0; run < part.times(250); run++) await editWhileAppending(part, run);
  for (let run = 0; run < part.times(10); run++) await editDuringEntry(part, run);
}

/** The program takes its time between reading and writing, under its lock, and the editor saves meanwhile. */
async function editWhileAppending(part, run) {
  const folder = makeFile(join(part.folder, `append-${run}`));
  const path = join(folder, 'a.yaml');
  const { child, ended } = startAppender(folder, 'x', 3, () => {}, PAUSE_MS);
  while (!existsSync(`${path}.lock`) && child.exitCode === null) await pause(1);
  await pause(Math.random() * 2 * PAUSE_MS);
  const isMet = existsSync(`${path}.lock`);
  const edited = readFileSync(path, 'utf8').replace('# taken', `# edited ${run}, taken`);
  const began = process.hrtime.bigint();
  saveAs(path, edited);
  const savedBy = process.hrtime.bigint();
  const { saved, code, complaint } = await ended;
  part.tried++;
  part.met += isMet ? 1 : 0;
  if (!readFileSync(path, 'utf8').includes(`# edited ${run}`)) {
    if (isUnseen(began, savedBy, complaint)) part.unseen++;
    else part.wrong.push(`append ${run}: the edit is lost (exit ${code}) ${complaint}`);
  }
  if (notesIn(folder) === undefined) part.wrong.push(`append ${run}: the file is torn`);
  if (code !== 0 || saved.length !== 3) part.wrong.push(`append ${run}: exit ${code}, ${saved.length} saved`);
}

const PAUSE_MS = 40;

/** Was it saved after the program's last look at the file and before that was replaced? No program can see that. */
const isUnseen = (began, savedBy, said) =>
  [...said.matchAll(/^looked at (\d+), replaced at (\d+)$/gm)].some(
    ([, looked, replaced]) => BigInt(looked) < savedBy && began < BigInt(replaced),
  );

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
