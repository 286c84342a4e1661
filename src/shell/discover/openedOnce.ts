import type { Assembled, EngineDocuments } from '../../documents/assemble.ts';
import { isAtOrAbove, type OpenedDocument, openDocument } from '../../documents/opened.ts';

/**
 * Documents as they were opened and engines as they were assembled, for a run that reads one shop in two states: what is the
 * same in both is parsed once, and is one engine, which is judged once. The last bytes of each path are kept, so it is not for
 * a run through many engines.
 */
export class OpenedOnce {
  readonly #known = new Map<string, { readonly bytes: Uint8Array; readonly document: OpenedDocument }>();
  /** By the folder of the engine. */
  readonly #engines = new Map<string, { readonly of: readonly unknown[]; readonly assembled: Assembled }>();

  open(path: string, shown: string, bytes: Uint8Array): OpenedDocument {
    const known = this.#known.get(shown);
    if (known?.document.path === path && Buffer.compare(known.bytes, bytes) === 0) return known.document;
    const document = openDocument(path, shown, bytes);
    this.#known.set(shown, { bytes, document });
    return document;
  }

  /** What these documents came to before, or come to now. */
  assemble(folder: string, documents: EngineDocuments, assemble: () => Assembled): Assembled {
    const of = everythingIn(documents);
    const known = this.#engines.get(folder);
    if (known !== undefined && isSame(known.of, of)) return known.assembled;
    const assembled = assemble();
    this.#engines.delete(folder);
    this.#engines.set(folder, { of, assembled });
    for (const oldest of [...this.#engines.keys()].slice(0, -MOST_ENGINES)) this.#engines.delete(oldest);
    return assembled;
  }

  /** What lies in and below a folder, so that memory does not grow with the engines. */
  forget(folder: string): void {
    this.#engines.delete(folder);
    for (const [shown, { document }] of this.#known)
      if (isAtOrAbove(folder, document.path)) this.#known.delete(shown);
  }
}

/** With each goes all that was judged of it. */
const MOST_ENGINES = 8;

/** All that an engine is assembled from, in one list: each group of documents begins with their number. */
function everythingIn({ folder, own, shared, extended, studies }: EngineDocuments): readonly unknown[] {
  const named = [...studies].flatMap(([register, byPath]) =>
    [...byPath].flatMap(([path, { document, around }]) => [
      register,
      path,
      document,
      around.length,
      ...around,
    ]),
  );
  const extending = [...extended].flat();
  return [folder, own.length, ...own, shared.length, ...shared, extending.length, ...extending, ...named];
}

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((each, index) => each === b[index]);
