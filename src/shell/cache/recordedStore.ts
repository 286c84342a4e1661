import { isAtOrAbove } from '../../documents/opened.ts';
import type { Store } from '../discover/store.ts';
import { digestOf } from './digestOf.ts';

/** What of a store a result can stand on: a way to ask, and what was asked about. */
export type Question = readonly [ask: keyof typeof ANSWERS, ...of: string[]];

const ANSWERS = {
  list: (store: Store, of: readonly string[]) => store.list(of),
  listIn: (store: Store, [folder = '']: readonly string[]) => store.listIn(folder),
  entries: (store: Store, of: readonly string[]) => store.entries(of),
  entriesIn: (store: Store, [folder = '']: readonly string[]) => store.entriesIn(folder),
  behind: (store: Store, [link = '']: readonly string[]) => store.behind(link),
  holdsDocuments: (store: Store, [folder = '']: readonly string[]) => store.holdsDocuments(folder),
  read: (store: Store, [path = '']: readonly string[]) => store.read(path),
};

/** What was asked of a store, and a digest over all that it answered. */
export interface Trace {
  readonly questions: readonly Question[];
  readonly answers: string;
}

/** A store that notes what it is asked and what it answers. */
export class RecordedStore implements Store {
  readonly #store: Store;
  readonly #noted = new Map<string, string>();
  #isSteady = true;

  constructor(store: Store) {
    this.#store = store;
  }

  /** Undefined where one question had two answers: somebody wrote meanwhile. */
  trace(): Trace | undefined {
    const questions = [...this.#noted.keys()].map((each) => JSON.parse(each));
    return this.#isSteady ? { questions, answers: sumOf(this.#noted.values()) } : undefined;
  }

  list: Store['list'] = (folders) => this.#note(['list', ...folders], this.#store.list(folders));
  listIn: Store['listIn'] = (folder) => this.#note(['listIn', folder], this.#store.listIn(folder));
  entries: Store['entries'] = (folders) => this.#note(['entries', ...folders], this.#store.entries(folders));
  entriesIn: Store['entriesIn'] = (folder) =>
    this.#note(['entriesIn', folder], this.#store.entriesIn(folder));
  behind: Store['behind'] = (link) => this.#note(['behind', link], this.#store.behind(link));
  holdsDocuments: Store['holdsDocuments'] = (folder) =>
    this.#note(['holdsDocuments', folder], this.#store.holdsDocuments(folder));
  read: Store['read'] = (path) => this.#note(['read', path], this.#store.read(path));

  shown: Store['shown'] = (path) => this.#store.shown(path);

  // Neither is asked while an engine is judged; a result that stood on one of them could not be kept.
  ids: Store['ids'] = (...asked) => this.#unnoted(this.#store.ids(...asked));
  problems: Store['problems'] = () => this.#unnoted(this.#store.problems());

  #unnoted<Answer>(answer: Answer): Answer {
    this.#isSteady = false;
    return answer;
  }

  #note<Answer>(question: Question, answer: Answer): Answer {
    const key = JSON.stringify(question);
    const digest = digestOf(answer);
    this.#isSteady &&= (this.#noted.get(key) ?? digest) === digest;
    this.#noted.set(key, digest);
    return answer;
  }
}

/** Asks the same questions again. What is asked about many engines is asked once in a run, as the loader opens it once. */
export class Asking {
  readonly #store: Store;
  readonly #shared = new Map<string, string>();

  constructor(store: Store) {
    this.#store = store;
  }

  /** The digest over the answers of now. */
  answers(questions: readonly Question[], own: string): string {
    return sumOf(questions.map((each) => this.#answer(each, own)));
  }

  #answer(question: Question, own: string): string {
    const [ask, ...of] = question;
    const key = JSON.stringify(question);
    const known = this.#shared.get(key);
    if (known !== undefined) return known;
    const digest = digestOf(ANSWERS[ask](this.#store, of));
    if (!of.some((path) => isAtOrAbove(own, path))) this.#shared.set(key, digest);
    return digest;
  }
}

const sumOf = (digests: Iterable<string>): string => digestOf([...digests]);
