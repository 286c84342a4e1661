import { isAtOrAbove, type OpenedDocument, openDocument } from '../../documents/opened.ts';

/**
 * Documents as they were opened, for a run that reads one shop in two states: what is the same in both is parsed once.
 * The last bytes of each path are kept, so it is not for a run through many engines.
 */
export class OpenedOnce {
  readonly #known = new Map<string, { readonly bytes: Uint8Array; readonly document: OpenedDocument }>();

  open(path: string, shown: string, bytes: Uint8Array): OpenedDocument {
    const known = this.#known.get(shown);
    if (known?.document.path === path && Buffer.compare(known.bytes, bytes) === 0) return known.document;
    const document = openDocument(path, shown, bytes);
    this.#known.set(shown, { bytes, document });
    return document;
  }

  /** What lies in and below a folder, so that memory does not grow with the engines. */
  forget(folder: string): void {
    for (const [shown, { document }] of this.#known)
      if (isAtOrAbove(folder, document.path)) this.#known.delete(shown);
  }
}
