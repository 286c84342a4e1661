import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { startOfFile } from '../../diagnostic/place.ts';
import { folderOf, type OpenedDocument } from '../../documents/opened.ts';
import { type Entry, nameOf } from './entry.ts';
import type { Store } from './store.ts';
import { isEngine, type Said, saidBy, type Unread, unreadOf } from './unread.ts';
import { type Reason, reasonOf } from './unreadReason.ts';
import { withoutText } from './withoutText.ts';

/** One that is reported. */
export interface UnreadFile extends Unread, Reason {
  /** The path under which it is reported. */
  readonly shown: string;
}

export function unreadProblem({ entry, shown, why, help }: UnreadFile): Diagnostic {
  const message = `${nameOf(entry.path)} is not read, since ${why}`;
  return diagnostic('unread', startOfFile(shown), message, help);
}

/** What looks like a document in a shop and is not read. Each entry is looked at once. */
export class UnreadFiles {
  readonly #store: Store;
  readonly #isInEngine: (folder: string) => boolean;
  readonly #said = new Map<string, Said>();
  readonly #found = new Map<string, UnreadFile | undefined>();

  constructor(store: Store, isInEngine: (folder: string) => boolean) {
    this.#store = store;
    this.#isInEngine = isInEngine;
  }

  /** In and below folders, of those entries that are wanted. */
  below = (
    folders: readonly string[],
    isWanted: (entry: Entry) => boolean = () => true,
  ): readonly UnreadFile[] => this.#reportedOf(this.#store.entries(folders).filter(isWanted));

  /** Those that verdicts stand on directly in a folder, or below it as well: each as a document that has this problem. */
  documentsIn = (folder: string): readonly OpenedDocument[] =>
    this.#reportedOf(this.#store.entriesIn(folder)).flatMap(asDocument);

  documentsBelow = (folder: string): readonly OpenedDocument[] =>
    this.#reportedOf(this.#store.entries([folder])).flatMap(asDocument);

  /** The folder is that of an engine, though its document is not read. */
  holdsEngine = (folder: string): boolean => this.#store.entriesIn(folder).some(this.#isEngine);

  enginesBelow = (folders: readonly string[]): readonly string[] =>
    this.#store
      .entries(folders)
      .filter(this.#isEngine)
      .map(({ path }) => folderOf(path));

  #isEngine = (entry: Entry): boolean => isEngine(entry, this.#saidBy(entry));

  #reportedOf(entries: readonly Entry[]): readonly UnreadFile[] {
    return entries.flatMap((entry) => {
      if (!this.#found.has(entry.path)) this.#found.set(entry.path, this.#lookAt(entry));
      return this.#found.get(entry.path) ?? [];
    });
  }

  #lookAt(entry: Entry): UnreadFile | undefined {
    const isInEngine = this.#isInEngine(folderOf(entry.path));
    const found = unreadOf(entry, this.#saidBy(entry), this.#store, isInEngine);
    const shown = this.#store.shown(entry.path);
    return found && { ...found, ...reasonOf(entry, this.#store), shown };
  }

  #saidBy(entry: Entry): Said {
    if (!this.#said.has(entry.path)) this.#said.set(entry.path, saidBy(entry, this.#store));
    return this.#said.get(entry.path);
  }
}

const asDocument = (file: UnreadFile): readonly OpenedDocument[] =>
  file.weight === 'document' ? [withoutText(file.entry.path, unreadProblem(file))] : [];
