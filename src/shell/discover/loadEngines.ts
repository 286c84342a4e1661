import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { startOfFile } from '../../diagnostic/place.ts';
import {
  type Assembled,
  assembleEngine,
  type EngineDocuments,
  type MeasuresFor,
} from '../../documents/assemble.ts';
import { folderOf, type OpenedDocument, openDocument } from '../../documents/opened.ts';
import { extendedBy } from './extended.ts';
import { withKindProblem, withPlaceProblem } from './misplaced.ts';
import { namedStudies, type ShopShelf, studyPathsIn } from './namedStudies.ts';
import type { OpenedOnce } from './openedOnce.ts';
import { depthOf, foldersAbove, isWithin } from './pathBelow.ts';
import { kindIn, type Store } from './store.ts';
import { type UnreadFile, UnreadFiles } from './unreadFiles.ts';
import type { Reason } from './unreadReason.ts';
import { whyUnread } from './whyUnread.ts';
import { withoutText } from './withoutText.ts';

/** An engine folder as it was found, and what its documents come to. */
export interface LoadedEngine extends Assembled {
  /** Relative to the root. */
  readonly folder: string;
  /** The texts of its documents, by the path under which they are reported. */
  readonly texts: Texts;
}

export type Texts = ReadonlyMap<string, string>;

const textsOf = (documents: readonly OpenedDocument[]): Texts =>
  new Map(documents.map((each) => [each.source.path, each.source.text]));

/** Which files of a shop a run is about. Paths are relative to the root. */
export interface Selection {
  readonly folders: readonly string[];
}

export interface Found {
  readonly engines: readonly string[];
  readonly others: readonly string[];
  readonly unread: readonly UnreadFile[];
}

/** Finds the engines of a shop and reads them one at a time, so that memory does not grow with their number. */
export class ShopLoader {
  readonly #store: Store;
  readonly #measuresFor: MeasuresFor;
  /** Documents above the engines, read once. */
  readonly #shared = new Map<string, OpenedDocument>();

  readonly #opened: OpenedOnce | undefined;
  readonly #shelf: ShopShelf;
  readonly #unread: UnreadFiles;

  /** `opened` is shared by the loaders of one shop in two states. */
  constructor(store: Store, measuresFor: MeasuresFor, opened?: OpenedOnce) {
    this.#store = store;
    this.#measuresFor = measuresFor;
    this.#opened = opened;
    this.#unread = new UnreadFiles(store, (folder) => this.engineAround(folder) !== undefined);
    this.#shelf = {
      open: (path) => this.#openShared(path),
      listIn: store.listIn,
      kindOf: (path) => kindIn(store, path),
      engineAround: (folder) => this.engineAround(folder),
    };
  }

  /** The engines at, below or around the selected folders, the files that belong to none, and what was not read there. */
  find({ folders }: Selection): Found {
    const engines = new Set(folders.flatMap((folder) => this.engineAround(folder) ?? []));
    const files = this.#store.list(folders);
    for (const folder of this.#unread.enginesBelow(folders)) engines.add(folder);
    // The folders above come first: what lies in an engine's folder is its own, and is not asked.
    for (const path of [...files].sort((a, b) => depthOf(a) - depthOf(b))) {
      const folder = folderOf(path);
      if (!isWithin(engines, folder) && this.#saysEngine(path)) engines.add(folder);
    }
    return {
      engines: [...engines].filter((each) => each === '.' || !isWithin(engines, folderOf(each))).sort(),
      others: files.filter((path) => !isWithin(engines, folderOf(path))),
      unread: this.#unread.below(folders),
    };
  }

  /** Why a folder, or a file that stands in it, is not read; undefined where it is. */
  whyUnread = (folder: string, file: string | undefined): Reason | undefined =>
    whyUnread(folder, file, this.engineAround(folder), this.#store);

  /** What looks like a document and is not read, in and below folders. */
  unread: UnreadFiles['below'] = (...asked) => this.#unread.below(...asked);

  /** The engine whose folder holds this one. */
  engineAround(folder: string): string | undefined {
    for (let at = folder; ; at = folderOf(at)) {
      if (this.#store.listIn(at).some((path) => this.#saysEngine(path)) || this.#unread.holdsEngine(at))
        return at;
      if (at === '.') return undefined;
    }
  }

  #saysEngine = (path: string): boolean => kindIn(this.#store, path) === 'engine';

  load(folder: string): LoadedEngine {
    const own = [
      ...this.#store.list([folder]).map((path) => this.#open(path)),
      ...this.#unread.documentsBelow(folder),
    ];
    const shared = foldersAbove(folder).flatMap((above) => [
      ...this.#store.listIn(above).map((path) => this.#openShared(path)),
      ...this.#unread.documentsIn(above),
    ]);
    const relevant = shared.filter((each) => each.kind !== undefined || each.problems.length > 0);
    const extended = extendedBy([...own, ...relevant], (path) => this.#openShared(path));
    const documents: EngineDocuments = {
      folder: this.#store.shown(folder),
      own: own.map((each) => withKindProblem(each)),
      shared: relevant.map((each) => withPlaceProblem(each)),
      extended: extended.documents,
      studies: namedStudies([...own, ...relevant], this.#shelf),
    };
    const assemble = (): Assembled => assembleEngine(documents, this.#measuresFor);
    const {
      engine,
      diagnostics,
      faulty,
      own: added,
    } = this.#opened?.assemble(folder, documents, assemble) ?? assemble();
    const extending = extended.problems.map(({ place }) => place.path);
    return {
      folder,
      engine: extending.length === 0 ? engine : undefined,
      diagnostics: [...diagnostics, ...extended.problems],
      faulty: [...new Set([...faulty, ...extending])],
      own: added,
      texts: textsOf([...own, ...relevant, ...extended.documents.values()]),
    };
  }

  /** What the limits documents of an engine extend, wherever it lies in the shop and whether it is there or not. */
  extendedBy(folder: string): readonly string[] {
    const limits = [folder, ...foldersAbove(folder)].flatMap((each, index) =>
      (index === 0 ? this.#store.list([each]) : this.#store.listIn(each)).filter((path) =>
        this.#mayExtend(path),
      ),
    );
    const open = (path: string): OpenedDocument => this.#openShared(path);
    return extendedBy(limits.map(open), open).targets;
  }

  /** The studies that the registers serving an engine name, by their paths. */
  studiesFor(folder: string): readonly string[] {
    return studyPathsIn([folder, ...foldersAbove(folder)], this.#shelf);
  }

  /** Only limits documents extend, and none without the word. */
  #mayExtend(path: string): boolean {
    const bytes = this.#store.read(path);
    return bytes.ok && Buffer.from(bytes.value).includes('extends');
  }

  /** The problems of files that belong to no engine; those without a kind are none of ours, but for one that a call names. */
  checkOther(
    path: string,
    isNamed: boolean,
  ): { readonly diagnostics: readonly Diagnostic[]; readonly texts: Texts } {
    const document = this.#openShared(path);
    const reported = withPlaceProblem(isNamed ? withKindProblem(document) : document);
    return { diagnostics: reported.problems, texts: textsOf([document]) };
  }

  #open(path: string): OpenedDocument {
    const bytes = this.#store.read(path);
    const shown = this.#store.shown(path);
    if (bytes.ok)
      return this.#opened?.open(path, shown, bytes.value) ?? openDocument(path, shown, bytes.value);
    const { reason, message, help } = bytes.problem;
    const code = reason === 'too-big' ? 'too-big' : 'unreadable';
    return withoutText(path, diagnostic(code, startOfFile(shown), message, help));
  }

  #openShared(path: string): OpenedDocument {
    const known = this.#shared.get(path) ?? this.#open(path);
    this.#shared.set(path, known);
    return known;
  }
}
