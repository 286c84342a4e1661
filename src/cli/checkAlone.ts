import type { World } from '../shell/world.ts';
import { carryOut } from './carryOut.ts';
import { addCheck } from './check/checkCommand.ts';
import type { CheckedEngine } from './check/checkEngine.ts';
import type { CheckCall, EngineTask } from './check/engineChecker.ts';

/** A call of `check`, as `run` would carry it out: in a file of the bundle that holds no other command. */
export const run = (words: readonly string[], world: World): Promise<number> =>
  carryOut(addCheck, words, world);

/** For a thread that takes its share of a run. */
export async function checkerFor(call: CheckCall): Promise<(task: EngineTask) => CheckedEngine> {
  const { threadChecker } = await import('./check/engineChecker.ts');
  return threadChecker(call);
}
