// The least that a program in node could do for an answer. It is loaded as ours is, from what was compiled before.
import { join } from 'node:path';
import { cacheFolder } from '../../src/shell/process/cacheFolder.ts';
import { loadCompiled } from '../../src/shell/process/compiled.ts';
import { skipOptimising } from '../../src/shell/process/compiler.ts';
import { keptPath } from '../../src/shell/process/keptCode.ts';

const file = join(import.meta.dirname, 'floorWork.cjs');
const path = keptPath(cacheFolder(process.env), file, 'floor');
skipOptimising();
loadCompiled(file, path).keep();
process.exit(0);
