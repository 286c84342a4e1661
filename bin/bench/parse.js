// Parses every YAML file below a folder and nothing else; prints how many milliseconds that took, by the clock and of
// processors. The files are in memory before the clock starts, so this is the least that any reader of these documents
// could take. Called with a number of threads as well, these share the files. Bundled first, with the options that the
// program parses with.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import { parseDocument } from 'yaml';
import { PARSE_OPTIONS } from '../../src/documents/yaml/parse.ts';

const [, program, folder, threads = '1'] = process.argv;
if (isMainThread) parseAll();
else parse(workerData);

async function parseAll() {
  const texts = readdirSync(folder, { recursive: true })
    .filter((path) => path.endsWith('.yaml'))
    .map((path) => readFileSync(join(folder, path), 'utf8'));
  const [start, busy] = [performance.now(), process.cpuUsage()];
  const count = Number(threads);
  if (count === 1) parse(texts);
  else await Promise.all(Array.from({ length: count }, (_, at) => inThread(everyNth(texts, count, at))));
  const wall = performance.now() - start;
  const { user, system } = process.cpuUsage(busy);
  process.stdout.write(JSON.stringify({ wall, cpu: (user + system) / 1000 }));
}

function parse(texts) {
  let errors = 0;
  for (const text of texts) errors += parseDocument(text, PARSE_OPTIONS).errors.length;
  if (errors > 0) throw new Error(`${errors} errors in the generated shop`);
}

function everyNth(texts, count, at) {
  return texts.filter((_, index) => index % count === at);
}

function inThread(texts) {
  return new Promise((done, failed) => {
    new Worker(program, { workerData: texts }).on('error', failed).on('exit', done);
  });
}
