import { spawn } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { answersIn, ENVIRONMENT, keptIn, makeShop, PROGRAM, SESSIONS, tenths, writtenIn } from './shop.js';

const SIGNALS = ['SIGKILL', 'SIGINT', 'SIGTERM'];
const MEASURE = ['--stage', 'teardown', '--measure', 'main_journal_diameter'];

/** Four decimals, no two alike in a run. */
const readingsOf = (run) =>
  Array.from({ length: 100 }, (_, index) => (3 + ((run * 7 + index * 13) % 9999) / 10000).toFixed(4));

/** Entries that are fed readings and killed at a random moment, two at a time. */
export async function killedRecord(part) {
  makeShop(part.folder);
  rmSync(join(part.folder, SESSIONS, 'teardown.yaml'));
  const count = part.times(240);
  for (let run = 0; run < count; run += 2) {
    await Promise.all([run, run + 1].filter((one) => one < count).map((one) => enterAndKill(part, one)));
  }
}

async function enterAndKill(part, run) {
  const day = new Date(Date.UTC(2000, 0, 1 + run)).toISOString().slice(0, 10);
  const readings = readingsOf(run);
  const signal = SIGNALS[run % SIGNALS.length];
  const { code, by, said } = await feedAndKill(part.folder, day, readings, signal);
  const fail = (what) => part.wrong.push(`${day} ${signal}: ${what}`);
  const kept = keptIn(join(part.folder, SESSIONS, `.${day}-teardown.part`));
  const file = join(part.folder, SESSIONS, `${day}-teardown.yaml`);
  part.tried++;
  part.met += kept.length > 0 ? 1 : 0;
  if (kept.length < answersIn(said)) fail(`${answersIn(said)} answered, ${kept.length} kept`);
  if (kept.some((text, index) => text !== readings[index])) fail('other readings');
  if (signal !== 'SIGKILL' && by !== null) fail(`did not end by itself (${by})`);
  if (signal !== 'SIGKILL' && ![130, 143].includes(code)) fail(`exit ${code}\n${said}`);
  if (existsSync(file) || kept.length === 0) return;
  const again = tenths(part.folder, ['record', '--date', day, ...MEASURE], 'finish\n');
  const written = writtenIn(file);
  if (again.status !== 1 || written.join() !== kept.join())
    fail(`${kept.length} kept, ${written.length} written\n${again.stderr}`);
  // Discovery looks at every session: with hundreds of them the next run would only start more slowly.
  rmSync(file, { force: true });
}

function feedAndKill(folder, day, readings, signal) {
  return new Promise((ended) => {
    const words = [PROGRAM, 'record', '--date', day, ...MEASURE];
    const child = spawn(process.execPath, words, { cwd: folder, env: ENVIRONMENT });
    let said = '';
    child.stdin.on('error', () => {});
    child.stderr.setEncoding('utf8').on('data', (text) => {
      // From the first answer, so that the signal meets writing and not the start of the program.
      if (said === '') setTimeout(() => child.kill(signal), Math.random() * 150);
      said += text;
    });
    let next = 0;
    const feeding = setInterval(() => {
      if (next < readings.length) child.stdin.write(`${readings[next++]}\n`);
    }, 1);
    child.on('close', (code, by) => {
      clearInterval(feeding);
      ended({ code, by, said });
    });
  });
}
