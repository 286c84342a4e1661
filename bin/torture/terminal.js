import { spawn, spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { ENVIRONMENT, keptIn, makeShop, PROGRAM, SESSIONS, tenths, writtenIn } from './shop.js';

const INTERRUPT = '\u0003';
const READINGS = ['3.2478', '3.2477', '3.2476', '3.2475', '3.2474'];

/** Somebody at a terminal presses the key for an interrupt while readings are typed. */
export async function interruptedTerminal(part) {
  if (spawnSync('script', ['-qec', 'true', '/dev/null']).status !== 0) {
    part.leftOut = 'script, which opens a terminal, is not installed';
    return;
  }
  for (let run = 0; run < part.times(20); run++) await interrupt(part, run);
}

async function interrupt(part, run) {
  const folder = makeShop(join(part.folder, `${run}`));
  const command = [process.execPath, PROGRAM, 'record', '--session', 'teardown'];
  const child = spawn('script', ['-qec', command.map((word) => `'${word}'`).join(' '), '/dev/null'], {
    cwd: folder,
    env: { ...ENVIRONMENT, TERM: 'xterm', NO_COLOR: '1' },
  });
  let shown = '';
  child.stdout.setEncoding('utf8').on('data', (text) => {
    shown += text;
  });
  const ended = new Promise((end) => {
    child.on('close', end);
  });
  const count = run % (READINGS.length + 1);
  while (!/\b1\b.*> ?|> $/m.test(shown) && child.exitCode === null) await pause(10);
  for (const reading of READINGS.slice(0, count)) {
    child.stdin.write(`${reading}\r`);
    await pause(Math.random() * 40);
  }
  child.stdin.write(INTERRUPT);
  const code = await ended;
  const kept = keptIn(join(folder, SESSIONS, '.teardown.part'));
  const fail = (what) => part.wrong.push(`after ${count} readings: ${what}\n${shown.slice(-600)}`);
  part.tried++;
  part.met += code === 130 ? 1 : 0;
  if (code !== 130) fail(`exit ${code}`);
  if (kept.join() !== READINGS.slice(0, count).join()) fail(`${kept.length} kept`);
  const rest = `${READINGS.slice(kept.length)
    .map((each) => `${each}\n`)
    .join('')}finish\n`;
  const again = tenths(folder, ['record', '--session', 'teardown'], rest);
  const written = writtenIn(join(folder, SESSIONS, 'teardown.yaml'));
  if (again.status !== 1 || written.join() !== READINGS.join())
    fail(`did not go on: ${again.said.slice(-300)}`);
  rmSync(folder, { recursive: true });
}
