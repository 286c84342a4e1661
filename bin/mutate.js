import { fork } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { calledWith, named } from './called.js';
import { AREAS } from './mutate/areas.js';
import { juryOf } from './mutate/jury.js';
import { sampled } from './mutate/sample.js';
import { codeOf, survivorLines, tableOf } from './mutate/told.js';

const USAGE = `
npm run mutate -- [--count 1500] [--seed 20260203] [--area NAME] [--least 92] [--patience 15] [--workers 2] [--verbose]

Changes the sources one place at a time and asks whether a test notices: prints by area how many of a seeded sample were
killed, and lists the survivors. Ends with 1 when an area has fewer killed than --least percent.

--area names the areas to try by parts of their names, with commas between. --patience is for how many seconds of tests a
mutant is tried: those of its own area, then others that reach it, the quick ones first. A survivor is one that they did
not notice, whatever a test that was not asked would have said. --verbose shows what became of each mutant.
`;

const { values } = calledWith(USAGE, {
  count: { type: 'number', default: '1500' },
  seed: { type: 'number', default: '20260203' },
  area: { type: 'string', default: '' },
  least: { type: 'number', default: '92' },
  patience: { type: 'number', default: '15' },
  workers: { type: 'number', default: '2' },
  verbose: { type: 'boolean', default: false },
});
const areas = values.area.split(',').flatMap((each) => named(each.trim(), Object.keys(AREAS), 'area'));

/** A mutant whose tests take so many times as long as without it is one that never ends; some time goes to starting. */
const TIMES = 4;
const TO_START_MS = 10_000;

/** Below node_modules, so that vitest leaves what is compiled there to node. */
const folder = mkdtempSync(join(import.meta.dirname, '../node_modules/.mutants-'));
const plan = join(folder, 'plan.json');
const mutants = sampled(values.count, values.seed, areas);
const began = Date.now();
const children = new Set();

const source = (file) => readFileSync(file, 'utf8');
const seconds = () => Math.round((Date.now() - began) / 1000);
const log = (text) => process.stderr.write(`${text}\n`);

/** With all that it started: a mutant that never ends would go on by itself. */
function kill({ pid }) {
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // It has ended already.
  }
}

/** A process of vitest that answers one message after another. Undefined when it ended or did not answer. */
function newWorker() {
  const child = fork(join(import.meta.dirname, 'mutate/worker.js'), {
    env: { ...process.env, MUTATE_PLAN: plan },
    detached: true,
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  children.add(child);
  const ask = (question, patienceMs) =>
    new Promise((answer) => {
      const end = (value) => {
        clearTimeout(timer);
        child.off('message', end);
        child.off('exit', gone);
        answer(value);
      };
      const gone = () => end(undefined);
      const timer = setTimeout(gone, patienceMs);
      child.once('message', end);
      child.once('exit', gone);
      child.send(question);
    });
  const stop = () =>
    new Promise((stopped) => {
      children.delete(child);
      if (child.exitCode === null && child.signalCode === null) child.once('exit', stopped);
      else stopped();
      kill(child);
    });
  return { ask, stop };
}

const patienceFor = (files) => TO_START_MS + TIMES * files.reduce((sum, { ms }) => sum + ms, 0);

/** Of all processes that were started and have ended; undefined where the system does not tell. */
function processorSeconds() {
  if (!existsSync('/proc/self/stat')) return undefined;
  const fields = readFileSync('/proc/self/stat', 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return (Number(fields[13]) + Number(fields[14])) / 100;
}

/** The first files alone, then more together: after the first failure the rest of those asked together is still loaded. */
const AT_ONCE = [2, 6, 24, Number.POSITIVE_INFINITY];

/** Undefined when there was no answer in time. */
async function askInTurns(worker, id, files) {
  for (let from = 0, turn = 0; from < files.length; from += AT_ONCE[turn++]) {
    const asked = files.slice(from, from + AT_ONCE[turn]);
    const answer = await worker.ask({ id, files: asked.map(({ path }) => path) }, patienceFor(asked));
    if (answer === undefined || answer.killedBy !== undefined) return answer;
  }
  return { killedBy: undefined };
}

async function tryAll(todo, jury) {
  let worker = newWorker();
  for (let mutant = todo.pop(); mutant !== undefined; mutant = todo.pop()) {
    const files = jury(mutant);
    const asked = Date.now();
    const answer = await askInTurns(worker, mutant.id, files);
    if (answer === undefined) {
      await worker.stop();
      worker = newWorker();
    }
    mutant.fate = answer === undefined ? 'timeout' : answer.killedBy === undefined ? 'survived' : 'killed';
    mutant.asked = files.length;
    if (values.verbose)
      log(
        `${mutant.fate} ${codeOf(mutant, source)}  (${answer?.killedBy ?? `${files.length} files`}, ${Date.now() - asked} ms)`,
      );
    const done = mutants.filter(({ fate }) => fate !== undefined).length;
    if (done % 50 === 0) log(`${seconds()} s: ${done} of ${mutants.length}`);
  }
  await worker.stop();
}

try {
  writeFileSync(plan, JSON.stringify(mutants));
  const first = newWorker();
  const coverage = await first.ask({ coverage: folder }, 1_800_000);
  await first.stop();
  if (coverage === undefined || coverage.failed.length > 0)
    throw new Error(`the tests fail without a mutant: ${coverage?.failed.join(', ')}`);
  log(`${seconds()} s: ${coverage.files.length} test files say what they reach`);
  const jury = juryOf(coverage, values.patience);
  const todo = [...mutants].reverse();
  const from = Date.now();
  await Promise.all(Array.from({ length: values.workers }, () => tryAll(todo, jury)));
  const rate = (Date.now() - from) / mutants.length;
  const { lines, isEnough } = tableOf(mutants, values.least);
  process.stdout.write(
    [
      `seed ${values.seed}, ${mutants.length} mutants, ${seconds()} s in all, ${Math.round(rate)} ms a mutant, ${processorSeconds() ?? 'unknown'} s of processors`,
      ...lines,
      ...survivorLines(mutants, source),
      '',
    ].join('\n'),
  );
  process.exitCode = isEnough ? 0 : 1;
} finally {
  for (const child of children) kill(child);
  rmSync(folder, { recursive: true, force: true });
}
