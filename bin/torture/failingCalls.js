import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ENVIRONMENT } from './shop.js';

const FAULTS = ['error=ENOSPC', 'error=EIO', 'error=EMFILE', 'error=EACCES', 'signal=SIGKILL'];

// A short count means something only where bytes are counted; here the system claims seven that it never moved.
export const faultsOf = ({ call }) => (/^p?(read|write)/.test(call) ? [...FAULTS, 'retval=7'] : FAULTS);

/** Why system calls cannot be made to fail here; empty where they can. */
export function whyNoTracing(part) {
  if (spawnSync('strace', ['-V']).status !== 0) return 'strace is not installed';
  const tried = spawnSync('strace', ['-qq', '-o', traceOf(part), 'true']);
  return tried.status === 0 ? '' : 'tracing is not permitted here';
}

const traceOf = (part) => join(part.folder, 'trace');

/** Runs a command with a fault in one of its calls, or with none. */
export function traced(part, folder, command, { call, nth, fault } = {}, input = '', env = ENVIRONMENT) {
  const inject = fault === undefined ? [] : ['-e', `inject=${call}:${fault}:when=${nth}`];
  const options = ['-f', '-y', '-qq', '-o', traceOf(part), '-e', 'trace=%file,%desc', ...inject];
  return spawnSync('strace', [...options, ...command], {
    cwd: folder,
    input,
    env,
    encoding: 'utf8',
    timeout: 60_000,
  });
}

const linesOf = (part) => (existsSync(traceOf(part)) ? readFileSync(traceOf(part), 'utf8').split('\n') : []);

const CHANGES =
  /^\d+ +(?:p?write|fsync|fdatasync|rename|link|unlink|mkdir|rmdir|fchmod|chmod|ftruncate)|O_(?:CREAT|WRONLY|RDWR)/;

/** The calls of the main thread that name the folder or something in it: strace counts each thread by itself. */
export function callsOn(part, folder) {
  const lines = linesOf(part);
  const main = lines[0].split(' ')[0];
  const counts = new Map();
  const found = [];
  for (const line of lines.filter((line) => line.startsWith(`${main} `))) {
    const call = /^\d+ +(\w+)\(/.exec(line)?.[1];
    if (call === undefined) continue;
    const nth = (counts.get(call) ?? 0) + 1;
    counts.set(call, nth);
    if (line.includes(folder) && call !== 'execve') found.push({ call, nth, changes: CHANGES.test(line) });
  }
  return found;
}

// The number of calls before ours is not the same in every run, so a fault may hit another call.
export const wasMet = (part, folder) =>
  linesOf(part).some(
    (line) => line.includes(folder) && (line.includes('(INJECTED)') || line.endsWith('= ?')),
  );
