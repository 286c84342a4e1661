import type { PlanContext } from '../work/context.ts';

/** What every opened engine takes, whatever was found. Common practice, no source. */
export const SUNDRIES: readonly string[] = ['gasket set', 'shaft seals', 'core plugs', 'gallery plugs'];

/** Whether an engine was taken apart since it last ran. */
export const wasOpened = ({ state }: PlanContext): boolean =>
  state.run.some(({ stage }) => stage !== 'service');

/** Of what every opened engine takes what no session of the run says is in. */
export const sundriesLeft = ({ state }: PlanContext): readonly string[] =>
  SUNDRIES.filter(
    (what) =>
      !state.run.some(({ partChanges }) =>
        partChanges.some(({ how, name }) => how !== 'machined' && name.toLowerCase() === what),
      ),
  );
