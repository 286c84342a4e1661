import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { calledWith, named } from './called.js';
import { table } from './table.js';
import { appendCalls } from './torture/appendCalls.js';
import { appendDisk } from './torture/appendDisk.js';
import { bundleAppender } from './torture/appender.js';
import { COMMAND_CALLS } from './torture/commandCalls.js';
import { editor } from './torture/editor.js';
import { keptCalls } from './torture/kept/failingCalls.js';
import { keptFlipped } from './torture/kept/flipped.js';
import { keptKilled } from './torture/kept/killed.js';
import { keptShared } from './torture/kept/shared.js';
import { killedAppender } from './torture/killedAppender.js';
import { killedRecord } from './torture/killedRecord.js';
import { Part } from './torture/part.js';
import { readOnlyDisk } from './torture/readOnlyDisk.js';
import { recordDisk } from './torture/recordDisk.js';
import { staleLocks } from './torture/staleLocks.js';
import { interruptedTerminal } from './torture/terminal.js';
import { writers } from './torture/writers.js';

/** Each with the least number of faults that must meet a write at full effort. */
const PARTS = [
  ['append killed', 200, killedAppender],
  ['append, each call failing', 80, appendCalls],
  ['append on a small disk', 3, appendDisk],
  ['record killed', 200, killedRecord],
  ['record on a small disk', 8, recordDisk],
  ['every command on a read-only disk', 8, readOnlyDisk],
  ...COMMAND_CALLS,
  ['an editor between read and write', 100, editor],
  ['stale locks, clock an hour off', 30, staleLocks],
  ['8 writers, 50 readings each', 400, writers],
  ['kept results, each call failing', 40, keptCalls],
  ['kept results, check killed', 25, keptKilled],
  ['kept results, a bit flipped', 150, keptFlipped],
  ['kept results, two checks and an editor', 5, keptShared],
  ['record interrupted at a terminal', 10, interruptedTerminal],
];

const USAGE = `
npm run torture -- [--effort 1] [--only PART]

Faults while something is written: programs killed, system calls that fail, disks that are too small or read-only, an
editor in between, locks left behind, many writers at once. Prints a table of what was tried, how often a fault met a
write, and what was wrong: a reading that was acknowledged is lost, a file is not whole, success is reported falsely.
Ends with 1 when anything was wrong or too few faults met, with 2 when something could not be run, which is no pass.

A tenth of the effort takes a tenth of the time. --only names the parts to run by a part of their names:
${PARTS.map(([name]) => `  ${name}`).join('\n')}
`;

const { values } = calledWith(USAGE, {
  effort: { type: 'number', default: '1' },
  only: { type: 'string', default: '' },
});
const { effort } = values;
const wanted = named(
  values.only,
  PARTS.map(([name]) => name),
  'part',
);
const folder = mkdtempSync(join(tmpdir(), 'torture '));
const parts = [];
try {
  bundleAppender(folder);
  for (const [name, least, run] of PARTS.filter(([name]) => wanted.includes(name))) {
    const part = new Part(
      name,
      Math.ceil(least * Math.min(effort, 1)),
      join(folder, `${parts.length}`),
      effort,
    );
    await run(part);
    part.finish();
    parts.push(part);
  }
} finally {
  rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 50 });
}

const rows = parts.map(({ name, tried, met, least, wrong, leftOut }) => [
  name,
  tried,
  met,
  least,
  wrong.length,
  leftOut === '' ? 0 : 1,
]);
const lines = [
  ...table(['kind', 'tried', 'met a write', 'at least', 'wrong', 'not run'], rows),
  ...parts.flatMap(({ name, leftOut }) =>
    leftOut === '' ? [] : [`not run, which is no pass: ${name}: ${leftOut}`],
  ),
  ...parts.flatMap(({ name, unseen }) =>
    unseen === 0
      ? []
      : [
          `${name}: ${unseen} lost that were saved between the last look and the replacing; not counted as wrong`,
        ],
  ),
  ...parts.flatMap(({ name, wrong }) => wrong.slice(0, 5).map((each) => `WRONG ${name}: ${each}`)),
];
process.stdout.write(`${lines.join('\n')}\n`);
const isWrong = parts.some(({ wrong }) => wrong.length > 0);
process.exitCode = isWrong ? 1 : parts.some(({ leftOut }) => leftOut !== '') ? 2 : 0;
