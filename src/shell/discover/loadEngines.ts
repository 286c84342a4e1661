import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { startOfFile } from '../../diagnostic/place.ts';
import {
  type Assembled,
  assembleEngine,
  type EngineDocuments,
  type MeasuresFor,
} from '../../documents/assemble.ts';
import { folderOf, type OpenedDocument, openDocument } from '../../documents/opened.ts';
import { childOf, textOf } from '../../documents/yaml/access.ts';
import { withKindProblem, withPlaceProblem } from './misplaced.ts';
import { namedStudies, type ShopShelf, studyPathsIn } from './namedStudies.ts';
import type { OpenedOnce } from './openedOnce.ts';
import { foldersAbove, pathFrom } from './pathBelow.ts';
import { kindIn, type Store } from './store.ts';

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

/** Finds the engines of a shop and reads them one at a time, so that memory does not grow with their number. */
export class ShopLoader {
  readonly #store: Store;
  readonly #measuresFor: MeasuresFor;
  /** Documents above the engines, read once. */
  readonly #shared = new Map<string, OpenedDocument>();

  readonly #opened: OpenedOnce | undefined;
  readonly #shelf: ShopShelf;

  /** `opened` is shared by the loaders of one shop in two states. */
  constructor(store: Store, measuresFor: MeasuresFor, opened?: OpenedOnce) {
    this.#store = store;
    this.#measuresFor = measuresFor;
    this.#opened = opened;
    this.#shelf = {
      open: (path) => this.#openShared(path),
      listIn: store.listIn,
      kindOf: (path) => kindIn(store, path),
      engineAround: (folder) => this.engineAround(folder),
    };
  }

  /** The engines at, below or around the selected folders, and the files that belong to none. */
  find({ folders }: Selection): { readonly engines: readonly string[]; readonly others: readonly string[] } {
    const engines = new Set(folders.flatMap((folder) => this.engineAround(folder) ?? []));
    const files = this.#store.list(folders);
    // The folders above come first: what lies in an engine's folder is its own, and is not asked.
    for (const path of [...files].sort((a, b) => depthOf(a) - depthOf(b))) {
      const folder = folderOf(path);
      if (!isWithin(engines, folder) && this.#saysEngine(path)) engines.add(folder);
    }
    return {
      engines: [...engines].filter((each) => each === '.' || !isWithin(engines, folderOf(each))).sort(),
      others: files.filter((path) => !isWithin(engines, folderOf(path))),
    };
  }

  /** The engine whose folder holds this one. */
  engineAround(folder: string): string | undefined {
    for (let at = folder; ; at = folderOf(at)) {
      if (this.#store.listIn(at).some((path) => this.#saysEngine(path))) return at;
      if (at === '.') return undefined;
    }
  }

  #saysEngine = (path: string): boolean => kindIn(this.#store, path) === 'engine';

  load(folder: string): LoadedEngine {
    const own = this.#store.list([folder]).map((path) => this.#open(path));
    const shared = foldersAbove(folder).flatMap((above) =>
      this.#store.listIn(above).map((path) => this.#openShared(path)),
    );
    const relevant = shared.filter((each) => each.kind !== undefined || each.problems.length > 0);
    const extended = this.#extendedBy([...own, ...relevant]);
    const documents: EngineDocuments = {
      folder: this.#store.shown(folder),
      own: own.map((each) => withKindProblem(each)),
      shared: relevant.map((each) => withPlaceProblem(each)),
      extended: extended.documents,
      studies: namedStudies([...own, ...relevant], this.#shelf),
    };
    const { engine, diagnostics } = assembleEngine(documents, this.#measuresFor);
    return {
      folder,
      engine: extended.problems.length === 0 ? engine : undefined,
      diagnostics: [...diagnostics, ...extended.problems],
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
    return this.#extendedBy(limits.map((path) => this.#openShared(path))).targets;
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

  /** The problems of files that belong to no engine; those without a kind are none of ours. */
  checkOther(path: string): { readonly diagnostics: readonly Diagnostic[]; readonly texts: Texts } {
    const document = this.#openShared(path);
    return { diagnostics: withPlaceProblem(document).problems, texts: textsOf([document]) };
  }

  #open(path: string): OpenedDocument {
    const bytes = this.#store.read(path);
    const shown = this.#store.shown(path);
    if (bytes.ok)
      return this.#opened?.open(path, shown, bytes.value) ?? openDocument(path, shown, bytes.value);
    const place = startOfFile(shown);
    const source = { path: shown, text: '', place: () => place };
    const { reason, message, help } = bytes.problem;
    const problems = [diagnostic(reason === 'too-big' ? 'too-big' : 'unreadable', place, message, help)];
    return { path, source, kind: undefined, root: undefined, problems };
  }

  #openShared(path: string): OpenedDocument {
    const known = this.#shared.get(path) ?? this.#open(path);
    this.#shared.set(path, known);
    return known;
  }

  /** Everything that limits documents extend, and what that extends in turn. */
  #extendedBy(documents: readonly OpenedDocument[]): Extended {
    const documentsOf = new Map<string, OpenedDocument>();
    const problems: Diagnostic[] = [];
    const targets: string[] = [];
    const waiting = documents.filter((each) => each.kind === 'limits');
    for (let document = waiting.pop(); document !== undefined; document = waiting.pop()) {
      const stated = childOf(document.root, 'extends');
      const path = textOf(stated);
      if (stated === undefined || path === undefined || documentsOf.has(document.source.path)) continue;
      const target = this.#openShared(pathFrom(document.path, path));
      targets.push(target.path);
      const problem = notToBeExtended(target);
      if (problem === undefined) {
        documentsOf.set(document.source.path, target);
        waiting.push(target);
      } else problems.push(diagnostic('extends', document.source.place(stated.span), `${path} ${problem}`));
    }
    return { documents: documentsOf, targets, problems };
  }
}

interface Extended {
  readonly documents: ReadonlyMap<string, OpenedDocument>;
  /** Their paths, and those of what could not be extended. */
  readonly targets: readonly string[];
  readonly problems: readonly Diagnostic[];
}

function notToBeExtended({ kind, problems }: OpenedDocument): string | undefined {
  const unreadable = problems.find(({ code }) => code === 'document/unreadable');
  if (unreadable !== undefined) return `cannot be extended: ${unreadable.message}`;
  return kind === 'limits' || problems.length > 0 ? undefined : 'is not a limits document';
}

const depthOf = (path: string): number => path.split('/').length;

/** Whether a folder is one of these, or lies below one. */
function isWithin(folders: ReadonlySet<string>, folder: string): boolean {
  for (let at = folder; ; at = folderOf(at)) {
    if (folders.has(at)) return true;
    if (at === '.') return false;
  }
}
