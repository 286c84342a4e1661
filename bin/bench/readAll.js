// Reads every YAML file below a folder and takes a digest of each: the least that a program can do to learn that nothing
// changed.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [, , folder] = process.argv;
for (const path of readdirSync(folder, { recursive: true })) {
  if (path.endsWith('.yaml')) {
    createHash('sha256')
      .update(readFileSync(join(folder, path)))
      .digest('base64');
  }
}
