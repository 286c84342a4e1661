// Parses every YAML file below a folder and nothing else; prints how many milliseconds that took, by the clock and of
// processors. The files are in memory before the clock starts, so this is the least that any reader of these documents
// could take. Bundled first, with the options that the program parses with.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { PARSE_OPTIONS } from '../../src/documents/yaml/loader.ts';

const [, , folder] = process.argv;
const texts = readdirSync(folder, { recursive: true })
  .filter((path) => path.endsWith('.yaml'))
  .map((path) => readFileSync(join(folder, path), 'utf8'));
const [start, busy] = [performance.now(), process.cpuUsage()];
let errors = 0;
for (const text of texts) errors += parseDocument(text, PARSE_OPTIONS).errors.length;
const wall = performance.now() - start;
const { user, system } = process.cpuUsage(busy);
if (errors > 0) throw new Error(`${errors} errors in the generated shop`);
process.stdout.write(JSON.stringify({ wall, cpu: (user + system) / 1000 }));
