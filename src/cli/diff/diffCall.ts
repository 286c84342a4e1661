import { STAGES } from '../../documents/session/stage.ts';
import { stemOf } from '../../documents/stem.ts';
import { engineNames } from '../shop/resolveShop.ts';
import type { ShopSource } from '../shop/shopSource.ts';
import { UsageError } from '../usage.ts';

/** The words of a call: what is compared, and of which engine. */
export interface DiffCall {
  readonly a: string;
  /** Undefined for the working tree. */
  readonly b: string | undefined;
  readonly engine: string | undefined;
}

/**
 * `A`, `A B`, each with an engine behind it: the third word, or a last word that is a folder, an engine's name or a part of
 * one. A name that git knows as a revision is one, and what may be a session's comes before a part of an engine's.
 */
export function readDiffCall(
  words: readonly string[],
  engine: string | undefined,
  source: ShopSource,
  isRevision: (word: string) => boolean,
): DiffCall {
  const [a = '', b, third, ...more] = words;
  if (more.length > 0 || (third !== undefined && engine !== undefined)) {
    throw new UsageError('too many words', 'tenths diff A [B] [ENGINE]');
  }
  if (third !== undefined) {
    // What was meant as a third side would be passed over; an engine may be at a revision alone.
    const isEngine = isFolder(third, source) || engineNames(third, source).length > 0;
    if (!isEngine && (isRevision(third) || mayNameSession(third, pathsHere(source), STAGES))) {
      throw new UsageError(
        `${third} is not an engine, and no more than two sides are compared`,
        'tenths diff A [B] [ENGINE]',
      );
    }
    return { a, b, engine: third };
  }
  if (b === undefined || engine !== undefined) return { a, b, engine };
  const isEngine = isFolder(b, source) || (!isRevision(b) && isEngineName(b, source));
  return isEngine ? { a, b: undefined, engine: b } : { a, b, engine };
}

function isFolder(word: string, source: ShopSource): boolean {
  const located = source.locate(word);
  return located !== undefined && located.file === undefined;
}

/** By the names of folders alone before any document has to be read. */
const isEngineName = (word: string, source: ShopSource): boolean =>
  pathsHere(source).some((path) => path.split('/').slice(0, -1).includes(word)) ||
  (!mayNameSession(word, pathsHere(source), STAGES) && engineNames(word, source).length > 0);

const pathsHere = (source: ShopSource): readonly string[] => source.locate('.')?.shop.store.list(['.']) ?? [];

/** Such as `HEAD~1`: it holds what no branch or tag may have in its name. */
export const isRevisionAlone = (word: string): boolean => /[~^]|@\{/.test(word);

/** Whether a word can name one of an engine's sessions, by the names of its files alone. */
export function mayNameSession(word: string, paths: readonly string[], stages: readonly string[]): boolean {
  const part = /\.ya?ml$/.test(word) ? stemOf(word) : word;
  return (
    stages.includes(word) || paths.some((path) => stemOf(path).toLowerCase().includes(part.toLowerCase()))
  );
}
