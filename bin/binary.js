// Makes one file of node and the built program, by node's own means (single executable applications): binary/tenths.
// Another node, and where to put it: node bin/binary.js NODE FILE
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { inject } from 'postject';
import { SCRIPTS } from './bundle.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const [, , node = process.execPath, file = join(root, 'binary/tenths')] = process.argv;
/** By which node knows that it was made into an executable of its own, from its documentation. */
const FUSE = 'NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2';

const names = [...filesIn('dist'), ...filesIn('schemas'), 'package.json'];
const work = mkdtempSync(join(tmpdir(), 'tenths-binary-'));
try {
  const main = join(work, 'main.cjs');
  await build({
    ...SCRIPTS,
    outExtension: {},
    entryPoints: ['src/cli/binary.ts'],
    outfile: main,
    define: { ...SCRIPTS.define, PACKED: JSON.stringify({ names, folder: `program-${digestOf(names)}` }) },
  });
  mkdirSync(dirname(file), { recursive: true });
  rmSync(file, { force: true });
  copyFileSync(realpathSync(node), file);
  chmodSync(file, 0o755);
  await inject(file, 'NODE_SEA_BLOB', blobOf(main), { sentinelFuse: FUSE });
} finally {
  rmSync(work, { recursive: true, force: true });
}
process.stdout.write(`${file}: ${statSync(file).size} bytes\n`);

function filesIn(folder) {
  return readdirSync(join(root, folder)).map((each) => `${folder}/${each}`);
}

function digestOf(files) {
  const hash = createHash('sha256');
  for (const each of files) hash.update(each).update(readFileSync(join(root, each)));
  return hash.digest('hex').slice(0, 16);
}

/** As the node that will hold it makes it. */
function blobOf(main) {
  const [config, output] = [join(work, 'config.json'), join(work, 'blob')];
  const assets = Object.fromEntries(names.map((each) => [each, join(root, each)]));
  writeFileSync(config, JSON.stringify({ main, output, disableExperimentalSEAWarning: true, assets }));
  execFileSync(node, ['--experimental-sea-config', config], { stdio: ['ignore', 'ignore', 'inherit'] });
  return readFileSync(output);
}
