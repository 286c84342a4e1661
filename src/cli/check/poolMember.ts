import { join } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { load } from '../../shell/process/compiled.ts';
import type { Answer, Order } from '../../shell/process/workerPool.ts';
import type * as Program from '../checkAlone.ts';
import type { CheckedEngine } from './checkEngine.ts';
import type { EngineTask } from './engineChecker.ts';

// A thread of a run over many engines: told the call as it starts, then engine after engine. V8 takes no code that was
// compiled under the options of a short run.
const program = load(join(import.meta.dirname, 'checkAlone.cjs')) as typeof Program;
const checking = program.checkerFor(workerData);

parentPort?.on('message', async ({ index, task }: Order<EngineTask>) => {
  const check = await checking;
  parentPort?.postMessage({ index, result: check(task) } satisfies Answer<CheckedEngine>);
});
