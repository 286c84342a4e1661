// Parses every YAML file below a folder and nothing else; prints how many milliseconds that took. The files are in
// memory before the clock starts, so this is the least that any reader of these documents could take. Bundled first, with
// the options that the program parses with.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { PARSE_OPTIONS } from '../../src/documents/yaml/loader.ts';

const [, , folder] = process.argv;
const texts = readdirSync(folder, { recursive: true })
  .filter((path) => path.endsWith('.yaml'))
  .map((path) => readFileSync(join(folder, path), 'utf8'));
const start = performance.now();
let errors = 0;
for (const text of texts) errors += parseDocument(text, PARSE_OPTIONS).errors.length;
const milliseconds = performance.now() - start;
if (errors > 0) throw new Error(`${errors} errors in the generated shop`);
process.stdout.write(`${milliseconds}\n`);
