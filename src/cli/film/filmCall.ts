import { characteristics } from '../../characteristics/registry.ts';
import { BEARING_KINDS } from '../../oiling/bearingKind.ts';
import { findMeasure } from '../shop/measureNamed.ts';
import { onlyOneEngine, UsageError } from '../usage.ts';

export interface FilmCall {
  readonly engine: string | undefined;
  readonly measure: string | undefined;
}

/** `[ENGINE] [MEASURE]`, in either order: no engine's word is the name of a clearance. */
export function readFilmCall(words: readonly string[], engine: string | undefined): FilmCall {
  const clearances = words.flatMap((word) => findMeasure(word, { all: characteristics }) ?? []);
  const others = words.filter((word) => findMeasure(word, { all: characteristics }) === undefined);
  const [measure, second] = clearances;
  if (second !== undefined || others.length > 1) {
    throw new UsageError(`too many words: ${words.join(' ')}`, 'tenths film [ENGINE] [MEASURE]');
  }
  if (measure !== undefined && !BEARING_KINDS.some((kind) => kind.measure === measure.id)) {
    const known = BEARING_KINDS.map((kind) => kind.measure).join(', ');
    throw new UsageError(`${measure.id} makes no oil film`, `name one of ${known}`);
  }
  return { engine: onlyOneEngine(others[0], engine), measure: measure?.id };
}
