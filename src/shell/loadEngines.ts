import { posix } from 'node:path';
import { type Diagnostic, diagnostic } from '../diagnostic/diagnostic.ts';
import { startOfFile } from '../diagnostic/place.ts';
import { childOf, textOf } from '../documents/access.ts';
import {
  type Assembled,
  assembleEngine,
  type EngineDocuments,
  type MeasuresFor,
} from '../documents/assemble.ts';
import {
  folderOf,
  isAtOrAbove,
  type OpenedDocument,
  openDocument,
  withoutKind,
} from '../documents/opened.ts';
import { sniffKind } from '../documents/sniff.ts';
import type { Store } from './store.ts';

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

  constructor(store: Store, measuresFor: MeasuresFor) {
    this.#store = store;
    this.#measuresFor = measuresFor;
  }

  /** The engines at, below or around the selected folders, and the files that belong to none. */
  find({ folders }: Selection): { readonly engines: readonly string[]; readonly others: readonly string[] } {
    const around = folders.flatMap((folder) => this.#engineAround(folder) ?? []);
    const files = this.#store.list(folders);
    const engines = [
      ...new Set([...around, ...files.filter((path) => this.#saysEngine(path)).map(folderOf)]),
    ].sort();
    const outermost = engines.filter(
      (folder) => !engines.some((other) => other !== folder && isAtOrAbove(other, folder)),
    );
    const others = files.filter((path) => !outermost.some((folder) => isAtOrAbove(folder, folderOf(path))));
    return { engines: outermost, others };
  }

  /** The engine whose folder holds this one. */
  #engineAround(folder: string): string | undefined {
    for (let at = folder; ; at = folderOf(at)) {
      if (this.#store.listIn(at).some((path) => this.#saysEngine(path))) return at;
      if (at === '.') return undefined;
    }
  }

  #saysEngine(path: string): boolean {
    const bytes = this.#store.read(path);
    if (!bytes.ok) return false;
    return (sniffKind(bytes.value) ?? openDocument(path, path, bytes.value).kind) === 'engine';
  }

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
    };
    const { engine, diagnostics } = assembleEngine(documents, this.#measuresFor);
    const structural = [...extended.problems, ...nestedEngines(folder, own)];
    return {
      folder,
      engine: structural.length === 0 ? engine : undefined,
      diagnostics: [...diagnostics, ...structural],
      texts: textsOf([...own, ...relevant, ...extended.documents.values()]),
    };
  }

  /** The problems of files that belong to no engine; those without a kind are none of ours. */
  checkOther(path: string): { readonly diagnostics: readonly Diagnostic[]; readonly texts: Texts } {
    const document = this.#openShared(path);
    return { diagnostics: withPlaceProblem(document).problems, texts: textsOf([document]) };
  }

  #open(path: string): OpenedDocument {
    const bytes = this.#store.read(path);
    const shown = this.#store.shown(path);
    if (bytes.ok) return openDocument(path, shown, bytes.value);
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
    const waiting = documents.filter((each) => each.kind === 'limits');
    for (let document = waiting.pop(); document !== undefined; document = waiting.pop()) {
      const stated = childOf(document.root, 'extends');
      const path = textOf(stated);
      if (stated === undefined || path === undefined || documentsOf.has(document.source.path)) continue;
      const target = this.#openShared(pathFrom(document.path, path));
      const problem = notToBeExtended(target);
      if (problem === undefined) {
        documentsOf.set(document.source.path, target);
        waiting.push(target);
      } else problems.push(diagnostic('extends', document.source.place(stated.span), `${path} ${problem}`));
    }
    return { documents: documentsOf, problems };
  }
}

/** A path in a document stands from its folder; one from the root of the disk is left as it is, to be refused. */
const pathFrom = (document: string, path: string): string =>
  posix.isAbsolute(path) ? path : posix.normalize(posix.join(folderOf(document), path));

interface Extended {
  readonly documents: ReadonlyMap<string, OpenedDocument>;
  readonly problems: readonly Diagnostic[];
}

function notToBeExtended({ kind, problems }: OpenedDocument): string | undefined {
  const unreadable = problems.find(({ code }) => code === 'document/unreadable');
  if (unreadable !== undefined) return `cannot be extended: ${unreadable.message}`;
  return kind === 'limits' || problems.length > 0 ? undefined : 'is not a limits document';
}

function foldersAbove(folder: string): readonly string[] {
  if (folder === '.') return [];
  const parent = folderOf(folder);
  return [parent, ...foldersAbove(parent)];
}

const withKindProblem = (document: OpenedDocument): OpenedDocument => {
  const problem = withoutKind(document);
  return problem === undefined ? document : { ...document, problems: [...document.problems, problem] };
};

/** A session or a sequence that lies in no engine's folder would never be read. */
function withPlaceProblem(document: OpenedDocument): OpenedDocument {
  if (document.kind !== 'session' && document.kind !== 'torque') return document;
  const message = `a ${document.kind} document in no engine's folder is never read`;
  const help = 'move it below the folder that holds the engine document';
  return {
    ...document,
    problems: [...document.problems, diagnostic('kind', startOfFile(document.source.path), message, help)],
  };
}

const nestedEngines = (folder: string, own: readonly OpenedDocument[]): readonly Diagnostic[] =>
  own
    .filter((each) => each.kind === 'engine' && folderOf(each.path) !== folder)
    .map((each) =>
      diagnostic(
        'two-engines',
        startOfFile(each.source.path),
        'this engine lies inside the folder of another',
        'keep each engine in a folder of its own, beside the others',
      ),
    );
