import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { onDisk, PAGE, remount, usedOn } from './disk.js';
import {
  answersIn,
  isTrace,
  keptIn,
  makeShop,
  POINTS,
  SESSIONS,
  tenths,
  WAITING,
  writtenIn,
} from './shop.js';

const READINGS = Array.from({ length: POINTS }, (_, index) => (3 + index / 10000).toFixed(4));

const lines = (readings) => readings.map((each) => `${each}\n`).join('');

/** Entries on disks that fill up: what was answered is kept, and with room again the entry goes on from there. */
export function recordDisk(part) {
  const folder = join(part.folder, 'disk');
  for (let free = 0; free <= 14 && part.leftOut === ''; free++) {
    onDisk(part, folder, 'size=2M', () => fillDisk(part, folder, free));
  }
}

function fillDisk(part, folder, free) {
  const fail = (what, said = '') => part.wrong.push(`${free} pages free: ${what}\n${said.slice(-400)}`);
  const session = join(folder, SESSIONS, 'teardown.yaml');
  makeShop(folder);
  if (!remount(folder, `size=${(usedOn(folder) + free) * PAGE}`)) return fail('could not be made smaller');
  const { status, said, stderr } = tenths(folder, ['record', '--session', 'teardown'], lines(READINGS));
  const kept = keptIn(join(folder, SESSIONS, '.teardown.part'));
  part.tried++;
  if (isTrace(said)) fail('a stack trace', said);
  if (status === 2) {
    part.met++;
    if (!/ENOSPC/.test(stderr)) fail('nothing said of the disk', said);
    if (readFileSync(session, 'utf8') !== WAITING) fail('the session that stood is another');
    if (kept.length < answersIn(stderr)) fail(`${answersIn(stderr)} answered, ${kept.length} kept`);
  } else if (writtenIn(session).join() !== READINGS.join()) {
    fail('success, and other readings in the session', said);
  }
  if (kept.some((text, index) => text !== READINGS[index])) fail('other readings kept');
  const left = readdirSync(join(folder, SESSIONS)).filter((name) => /\.(?:tmp|lock)$/.test(name));
  if (left.length > 0) fail(`left ${left}`);
  if (status !== 2) return;
  remount(folder, 'size=2M');
  const rest = `${lines(READINGS.slice(kept.length))}finish\n`;
  const again = tenths(folder, ['record', '--session', 'teardown'], rest);
  if (again.status !== 1 || writtenIn(session).join() !== READINGS.join()) fail('did not go on', again.said);
}
