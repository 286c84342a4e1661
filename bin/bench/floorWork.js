// Git's calls, and parsing the documents that are needed, with the options of our own parser.
// Called with a folder, how many states of it are read, and the calls.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { PARSE_OPTIONS } from '../../src/documents/yaml/parse.ts';

const [, , folder, states, ...calls] = process.argv;
for (const call of calls) {
  const { status, stderr } = spawnSync('git', ['-C', folder, ...call.split(' ')]);
  if (status !== 0) throw new Error(`git ${call}: ${stderr}`);
}
const documents = readdirSync(folder, { recursive: true }).filter((path) => path.endsWith('.yaml'));
for (let state = 0; state < Number(states); state++) {
  for (const path of documents) parseDocument(readFileSync(join(folder, path), 'utf8'), PARSE_OPTIONS);
}
