import type { Store } from '../discover/store.ts';
import type { CachePlace } from '../world.ts';
import { EntryFiles } from './entryFiles.ts';
import { Asking, type Question, RecordedStore, type Trace } from './recordedStore.ts';

/** What a result is of: a folder as a store has it. */
export interface Subject {
  readonly store: Store;
  readonly folder: string;
  /** All that the result depends on and that is not in the store: plain data. */
  readonly about: unknown;
}

/**
 * Results of earlier runs, plain data in JSON. One is taken where the store answers every question that the result stands on
 * as it did then: by digests of what was read and listed, never by times.
 */
export class ResultCache {
  readonly #files: EntryFiles;
  readonly #build: string;
  readonly #asking = new WeakMap<Store, Asking>();

  constructor({ folder, build }: CachePlace, files = new EntryFiles(folder)) {
    this.#files = files;
    this.#build = build;
  }

  /** What `use` does not look into need not be kept: it is called before a new result is written. */
  recall<Result, Used>(
    { store, folder, about }: Subject,
    workOut: (store: Store) => Result,
    use: (result: Result) => Used,
  ): Used {
    const key = JSON.stringify([this.#build, folder, about]);
    const kept = this.#kept(key, store, folder);
    if (kept !== undefined) return use(JSON.parse(kept));
    const recorded = new RecordedStore(store);
    const result = workOut(recorded);
    const used = use(result);
    this.#keep(key, recorded.trace(), result);
    return used;
  }

  #kept(key: string, store: Store, folder: string): string | undefined {
    const entry = this.#files.read(key);
    if (entry === undefined) return undefined;
    const end = entry.indexOf('\n');
    const { questions, answers } = JSON.parse(entry.slice(0, end)) as Trace;
    return this.#answersOf(store, questions, folder) === answers ? entry.slice(end + 1) : undefined;
  }

  #keep(key: string, trace: Trace | undefined, result: unknown): void {
    if (trace !== undefined) this.#files.write(key, `${JSON.stringify(trace)}\n${JSON.stringify(result)}`);
  }

  #answersOf(store: Store, questions: readonly Question[], folder: string): string {
    const asking = this.#asking.get(store) ?? new Asking(store);
    this.#asking.set(store, asking);
    return asking.answers(questions, folder);
  }
}
