import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Registry } from '../characteristics/registry.ts';
import type { ReadingBlock } from '../documents/reading.ts';
import type { SessionDocument } from '../documents/session.ts';

/**
 * Whether a reading was taken before work on the part that it measures: it is kept, and no longer judged.
 * Only the order of readings and work counts; between two pieces of work blocks may stand in any order.
 */
export const stepsBack = (
  session: SessionDocument,
  block: ReadingBlock,
  position: string,
  characteristic: Characteristic,
  registry: Registry,
): boolean =>
  session.work.some(
    ({ index, on }) => index > block.index && isWorkOn(on.name, characteristic, position, registry),
  );

/** Whether a session's work changed this part, wherever in the session it stands. */
export const isWorkedOn = (
  session: SessionDocument,
  position: string,
  characteristic: Characteristic,
  registry: Registry,
): boolean => session.work.some(({ on }) => isWorkOn(on.name, characteristic, position, registry));

/** Work on `cylinder 3` changes what is measured of that cylinder, and what is worked out from it. */
export function isWorkOn(
  on: string,
  characteristic: Characteristic,
  position: string,
  registry: Registry,
): boolean {
  const inputs = characteristic.derivations.flatMap((each) =>
    each.inputs.flatMap((id) => registry.find(id) ?? []),
  );
  return [characteristic, ...inputs].some((each) => isPart(on, each, position));
}

function isPart(on: string, { id, family }: Characteristic, position: string): boolean {
  const words = on.toLowerCase().split(/[ _]+/);
  if (words.length === 1) {
    return words[0] === 'crankshaft' ? /^(main_journal|crankpin|crankshaft|thrust_journal)_/.test(id) : false;
  }
  const named = words.at(-1);
  if (named !== position.toLowerCase() && family !== 'engine') return false;
  return id.startsWith(`${words.slice(0, -1).join('_')}_`);
}
