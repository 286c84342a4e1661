import { findPosition } from '../../layout/readKey.ts';
import type { World } from '../../shell/world.ts';
import { onlyOneEngine, UsageError } from '../usage.ts';
import { findMeasure } from './measureNamed.ts';
import { type EngineFolder, findEngine, isCalled, sourceOf } from './resolveShop.ts';
import type { ShopSource } from './shopSource.ts';

/** What stands behind a characteristic: `[POSITION] [ENGINE]`; the engine may come first. */
export interface Subject {
  readonly position: string | undefined;
  readonly engine: string | undefined;
}

interface SubjectOptions {
  readonly engine?: string | undefined;
  readonly position?: string | undefined;
  readonly at?: string | undefined;
}

/** One word may be either: a position where the engine that is meant without a name has it. */
export function readSubject(
  measure: string,
  words: readonly string[],
  options: SubjectOptions,
  world: World,
): Subject {
  const [first, second, ...more] = words;
  const isPositionNamed = options.position !== undefined;
  if (more.length > 0 || (isPositionNamed && second !== undefined)) throw tooMany(words);
  if (first === undefined || isPositionNamed) {
    return { position: options.position, engine: onlyOneEngine(first, options.engine) };
  }
  const source = sourceOf(options.at, '.', world);
  if (second !== undefined) {
    const isEngineFirst =
      isPositionOf(first, measure, second, source) && !isPositionOf(second, measure, first, source);
    const [position, engine] = isEngineFirst ? [second, first] : [first, second];
    return { position, engine: onlyOneEngine(engine, options.engine) };
  }
  if (options.engine !== undefined) {
    const isTwice = isCalled(first, source);
    return { position: first, engine: onlyOneEngine(isTwice ? first : undefined, options.engine) };
  }
  return isPositionHere(measure, first, source)
    ? { position: first, engine: undefined }
    : { position: undefined, engine: first };
}

const tooMany = (words: readonly string[]): UsageError =>
  new UsageError(
    `too many words: ${words.join(' ')}`,
    'CHARACTERISTIC [POSITION] [ENGINE]; put a position of several words in quotes',
  );

function isPositionHere(measure: string, word: string, source: ShopSource): boolean {
  if (isCalled(word, source)) return false;
  return isPositionOf(undefined, measure, word, source);
}

/** Whether an engine, without a name the one that is meant here, has such a position. */
function isPositionOf(name: string | undefined, measure: string, word: string, source: ShopSource): boolean {
  const found = engineCalled(name, source);
  if (found === undefined) return false;
  const { engine, registry } = found.shop.load(found.folder);
  const characteristic = findMeasure(measure, registry);
  if (engine === undefined || characteristic === undefined) return false;
  // A step of the assembly may have any name: what an engine is called comes first.
  if (characteristic.family.isNamedBySession && engineCalled(word, source) !== undefined) return false;
  return findPosition(engine.document.layout, characteristic.family, word) !== undefined;
}

/** Undefined where there is none of that name, or more than one. */
const engineCalled = (name: string | undefined, source: ShopSource): EngineFolder | undefined =>
  unlessUnclear(() => findEngine(name, source));

function unlessUnclear<T>(find: () => T | undefined): T | undefined {
  try {
    return find();
  } catch (error) {
    if (error instanceof UsageError) return undefined;
    throw error;
  }
}
