// Entries that are killed: `tenths record` is fed readings and ended by KILL, INT or TERM at a random moment. Every
// reading that was answered must be on the disk, the entry must go on from there, and the session that comes of it must
// hold exactly the readings that were kept, as they were typed. Prints figures; ends with 1 when one was lost.
//
//   node bin/tortureRecord.js [kills=300]

import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const KILLS = Number(process.argv[2] ?? 300);
const PROGRAM = join(import.meta.dirname, 'tenths.cjs');
const SIGNALS = ['SIGKILL', 'SIGINT', 'SIGTERM'];

const folder = mkdtempSync(join(tmpdir(), 'torture record '));
const sessions = join(folder, 'engines/pump/sessions');
const failures = [];

function makeShop() {
  mkdirSync(join(folder, 'engines/pump'), { recursive: true });
  writeFileSync(join(folder, 'shop.yaml'), 'kind: shop\nunits: { length: in }\n');
  writeFileSync(
    join(folder, 'engines/pump/engine.yaml'),
    'kind: engine\nname: Pump\nlayout: { mains: 100 }\n',
  );
  // Every reading is out, so every reading is spoken of as soon as it is on the disk.
  writeFileSync(
    join(folder, 'engines/pump/limits.yaml'),
    'kind: limits\nsource: Invented.\nlimits: { main_journal_diameter: { wear: { min: 9 } } }\n',
  );
}

const MEASURE = ['--stage', 'teardown', '--measure', 'main_journal_diameter'];

/** Four decimals, no two alike in a run. */
const readingsOf = (run) =>
  Array.from({ length: 100 }, (_, index) => (3 + ((run * 7 + index * 13) % 9999) / 10000).toFixed(4));

function runAndKill(name, readings, signal, delayMs) {
  return new Promise((ended) => {
    const child = spawn(process.execPath, [PROGRAM, 'record', '--date', name, ...MEASURE], { cwd: folder });
    let said = '';
    child.stdin.on('error', () => {});
    child.stderr.setEncoding('utf8').on('data', (text) => {
      // From the first answer, so that the signal meets writing and not the start of the program.
      if (said === '') setTimeout(() => child.kill(signal), delayMs);
      said += text;
    });
    let next = 0;
    const feeding = setInterval(() => {
      if (next < readings.length) child.stdin.write(`${readings[next++]}\n`);
    }, 1);
    child.on('close', (code, by) => {
      clearInterval(feeding);
      ended({ answered: new Set(said.match(/^line \d+:/gm)).size, code, by, said });
    });
  });
}

function keptIn(part) {
  if (!existsSync(part)) return [];
  return readFileSync(part, 'utf8')
    .split('\n')
    .flatMap((line) => {
      try {
        const event = JSON.parse(line);
        return event.do === 'take' ? [event.text] : [];
      } catch {
        return [];
      }
    });
}

async function torture(run) {
  const day = new Date(Date.UTC(2000, 0, 1 + run)).toISOString().slice(0, 10);
  const readings = readingsOf(run);
  const signal = SIGNALS[run % SIGNALS.length];
  const { answered, code, by, said } = await runAndKill(day, readings, signal, Math.random() * 150);
  const kept = keptIn(join(sessions, `.${day}-teardown.part`));
  const wasWhole = existsSync(join(sessions, `${day}-teardown.yaml`));
  if (kept.length < answered) failures.push(`${day} ${signal}: ${answered} answered, ${kept.length} kept`);
  if (kept.some((text, index) => text !== readings[index])) failures.push(`${day} ${signal}: other readings`);
  if (signal !== 'SIGKILL' && by !== null) failures.push(`${day} ${signal}: did not end by itself (${by})`);
  if (signal !== 'SIGKILL' && ![130, 143].includes(code))
    failures.push(`${day} ${signal}: exit ${code}\n${said}`);
  if (wasWhole || kept.length === 0) return { answered, kept: kept.length };
  const again = spawnSync(process.execPath, [PROGRAM, 'record', '--date', day, ...MEASURE], {
    cwd: folder,
    input: 'finish\n',
    encoding: 'utf8',
  });
  const file = join(sessions, `${day}-teardown.yaml`);
  const written = existsSync(file) ? (readFileSync(file, 'utf8').match(/\d\.\d{4}/g) ?? []) : [];
  if (again.status !== 1 || written.join() !== kept.join()) {
    failures.push(`${day} ${signal}: ${kept.length} kept, ${written.length} written\n${again.stderr}`);
  }
  // Discovery looks at every session: with hundreds of them the next run would only start more slowly.
  rmSync(file, { force: true });
  return { answered, kept: kept.length };
}

makeShop();
let [answered, kept] = [0, 0];
for (let run = 0; run < KILLS; run += 2) {
  for (const each of await Promise.all([run, run + 1].filter((one) => one < KILLS).map(torture))) {
    answered += each.answered;
    kept += each.kept;
  }
}
rmSync(folder, { recursive: true });
process.stdout.write(
  `record killed ${KILLS} times: ${answered} readings answered, ${kept} kept, ${failures.length} failures\n`,
);
for (const failure of failures) process.stdout.write(`  ${failure}\n`);
process.exitCode = failures.length === 0 ? 0 : 1;
