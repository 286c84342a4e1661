import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildSync } from 'esbuild';
import { parse } from 'yaml';

/** A session with no reading yet. */
export const START = 'kind: session\n# taken in the order of the bench\nreadings: []   # none yet\n';

let program;

/** The program of the tests that appends readings and says each once it is saved. */
export function bundleAppender(folder) {
  const outfile = join(folder, 'appender.cjs');
  const entry = join(import.meta.dirname, '../../tests/shell/write/appender.ts');
  buildSync({ entryPoints: [entry], outfile, bundle: true, platform: 'node', format: 'cjs' });
  program = outfile;
}

export function makeFile(folder, text = START) {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'a.yaml'), text);
  return folder;
}

/** Appends so many readings, `NAME-1` and so on. */
export const appending = (folder, name, count, pauseMs = 0) => [
  process.execPath,
  program,
  folder,
  'a.yaml',
  name,
  `${count}`,
  `${pauseMs}`,
];

/** The same as a child; `saved` of its end are the readings that it acknowledged. */
export function startAppender(folder, name, count, onSaved = () => {}, pauseMs = 0) {
  const [command, ...words] = appending(folder, name, count, pauseMs);
  const child = spawn(command, words);
  let [said, complaint] = ['', ''];
  child.stdout.on('data', (text) => {
    said += text;
    onSaved();
  });
  child.stderr.on('data', (text) => {
    complaint += text;
  });
  const ended = new Promise((end) => {
    child.on('close', (code) => end({ saved: said.split('\n').slice(0, -1), code, complaint }));
  });
  return { child, ended };
}

/** The notes of the readings in the session; undefined when the file is not whole. */
export function notesIn(folder) {
  try {
    return parse(readFileSync(join(folder, 'a.yaml'), 'utf8')).readings.map(({ note }) => note);
  } catch {
    return undefined;
  }
}

export const besides = (folder) => readdirSync(folder).filter((name) => name !== 'a.yaml');

/** Is what stands in the file one of the two whole states, and does it hold what was acknowledged? */
export function judgeAppend(part, folder, { status, stdout }, start = START) {
  const text = readFileSync(join(folder, 'a.yaml'), 'utf8');
  const notes = notesIn(folder);
  if (text !== start && !(notes?.length === 1 && notes[0] === 'x-1'))
    part.wrong.push(`damaged: ${text.slice(0, 300)}`);
  if ((status === 0 || stdout.includes('x-1')) && text === start)
    part.wrong.push('success, and nothing was written');
}
