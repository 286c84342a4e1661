import { cpSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { callsOn, faultsOf, traced, wasMet, whyNoTracing } from './failingCalls.js';
import { evenly } from './part.js';
import { answersIn, isTrace, keptIn, makeShop, PROGRAM, SESSIONS, tenths, WAITING } from './shop.js';

const READINGS = ['3.2478', '3.2477', '3.2476'];
const ENTRY = `${READINGS.map((each) => `${each}\n`).join('')}finish\n`;

/** Commands that write, and what is piped into them. */
const COMMANDS = [
  ['record', ['record', '--session', 'teardown'], ENTRY],
  ['import', ['import', 'mains.csv', '--stage', 'machined', '--date', '2026-02-03'], ''],
  ['new', ['new', 'engine', 'Crane', '--cylinders', '4'], ''],
  ['init', ['init', '--no-git', '--ci'], ''],
  ['report', ['report', 'pump', '--to', 'sheet.html'], ''],
];

/** Of each command, each call that changes something and some that read. */
const FAULTS = 48;

export const COMMAND_CALLS = COMMANDS.map(([name, words, input]) => [
  `${name}, each call failing`,
  20,
  (part) => failCalls(part, words, input),
]);

function failCalls(part, words, input) {
  part.leftOut = whyNoTracing(part);
  if (part.leftOut !== '') return;
  const pattern = makeShop(join(part.folder, 'pattern'));
  const copy = (name) => {
    const folder = join(part.folder, name);
    cpSync(pattern, folder, { recursive: true });
    return folder;
  };
  const command = [process.execPath, PROGRAM, ...words];
  const sound = copy('sound');
  const { status, stderr } = traced(part, sound, command, {}, input);
  const wanted = { status, before: filesIn(pattern), after: filesIn(sound) };
  if (status > 1) part.wrong.push(`does not run: ${stderr}`);
  for (const [at, fault] of faultsToTry(part, sound).entries()) {
    const folder = copy(`${at}`);
    const ended = traced(part, folder, command, fault, input);
    const met = wasMet(part, folder);
    part.tried++;
    part.met += met ? 1 : 0;
    const fail = (what) =>
      part.wrong.push(`${fault.call} ${fault.nth} ${fault.fault}: ${what}\n${ended.stderr.slice(-300)}`);
    judge(folder, ended, wanted, fail);
    if (met && isTrace(ended.stderr) && !hitProgram(ended.stderr)) fail('a stack trace');
    if (words[0] === 'record') judgeEntry(folder, ended, wanted, fail);
    else goOn(folder, words, input, wanted, fail);
  }
}

/** Each thread counts its calls by itself: the same fault may also hit a file of the program, which then cannot run. */
const hitProgram = (text) => /Cannot find module|\/dist\/\w+\.cjs'/.test(text);

function faultsToTry(part, sound) {
  const calls = callsOn(part, sound);
  const withFaults = (some) => some.flatMap((each) => faultsOf(each).map((fault) => ({ ...each, fault })));
  const [changing, reading] = [true, false].map((is) =>
    withFaults(calls.filter(({ changes }) => changes === is)),
  );
  return [...evenly(changing, part.times(FAULTS)), ...evenly(reading, part.times(FAULTS / 4))];
}

/** Files by path, without those that nobody is to see. */
const filesIn = (folder) =>
  new Map(
    readdirSync(folder, { recursive: true })
      .filter(
        (path) =>
          !/(?:^|\/)\.[^/]*\.(?:tmp|lock|part)|\.lock/.test(path) && statSync(join(folder, path)).isFile(),
      )
      .map((path) => [path, readFileSync(join(folder, path), 'utf8')]),
  );

/** Every file is as it was or as it was to be, and success is not said of less. */
function judge(folder, { status }, wanted, fail) {
  const files = filesIn(folder);
  const paths = new Set([...files.keys(), ...wanted.before.keys(), ...wanted.after.keys()]);
  for (const path of paths) {
    const text = files.get(path);
    const isOld = text === wanted.before.get(path);
    const isNew = text === wanted.after.get(path);
    if (!isOld && !isNew) fail(`${path} is damaged: ${JSON.stringify(text?.slice(0, 200))}`);
    if (status === wanted.status && !isNew) fail(`exit ${status}, and ${path} is not written`);
  }
}

/** What was answered is kept, in the journal or in the session, and the rest can be entered. */
function judgeEntry(folder, { status, stderr }, wanted, fail) {
  const session = readFileSync(join(folder, SESSIONS, 'teardown.yaml'), 'utf8');
  if (session !== WAITING) return;
  const kept = keptIn(join(folder, SESSIONS, '.teardown.part'));
  if (kept.length < answersIn(stderr)) fail(`${answersIn(stderr)} answered, ${kept.length} kept`);
  const rest = `${READINGS.slice(kept.length)
    .map((each) => `${each}\n`)
    .join('')}finish\n`;
  const again = tenths(folder, ['record', '--session', 'teardown'], rest);
  const now = readFileSync(join(folder, SESSIONS, 'teardown.yaml'), 'utf8');
  if (again.status !== wanted.status || now !== wanted.after.get(`${SESSIONS}/teardown.yaml`))
    fail(`did not go on (exit ${status}, then ${again.status}): ${again.said.slice(-300)}`);
}

/** Once the fault has gone the same call ends what it began, or says what is there already. */
function goOn(folder, words, input, wanted, fail) {
  const again = tenths(folder, words, input);
  const files = filesIn(folder);
  const missing = [...wanted.after].filter(([path, text]) => files.get(path) !== text);
  if (missing.length > 0 && !/is there already/.test(again.said))
    fail(`again: exit ${again.status}, ${missing.map(([path]) => path)} missing\n${again.said.slice(-300)}`);
}
