// The least that a program in node could do for an answer. It is loaded as ours is, from what was compiled before.
import { join } from 'node:path';
import { cacheFolder } from '../../src/shell/process/cacheFolder.ts';
import { loadCompiled } from '../../src/shell/process/compiled.ts';
import { skipOptimising } from '../../src/shell/process/compiler.ts';

skipOptimising();
loadCompiled(join(import.meta.dirname, 'floorWork.cjs'), cacheFolder(process.env));
process.exit(0);
