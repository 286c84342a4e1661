import { type Diagnostic, diagnostic } from '../diagnostic/diagnostic.ts';
import { startOfFile } from '../diagnostic/place.ts';
import { didYouMean } from '../diagnostic/suggestion.ts';
import type { Layout } from '../layout/layout.ts';
import type { Parts } from '../layout/part.ts';
import { certifiedErrors } from '../measurement/calibration/certificate.ts';
import type { KnownErrors } from '../measurement/calibration/knownError.ts';
import type { Fraction } from '../quantity/fraction.ts';
import { type DocumentContext, report, type UnitsInForce } from './amount.ts';
import { type EngineDocument, readEngine } from './engine/engine.ts';
import { type RegisteredInstrument, readInstruments } from './engine/instruments.ts';
import { type OwnCharacteristic, readOwnCharacteristics } from './engine/ownCharacteristic.ts';
import { ownProblems } from './engine/ownProblems.ts';
import { readLayout } from './engine/readLayout.ts';
import type { NamedStudy, StudyAt } from './engine/registerStudies.ts';
import { sameInstruments } from './engine/sameInstrument.ts';
import { type DecisionRule, type ReadingGrid, readShop } from './engine/shop.ts';
import { everyEdition } from './limits/editions.ts';
import { formulaProblems } from './limits/limitFormulas.ts';
import { type LimitsLevel, orderLimits } from './limits/limitOrder.ts';
import { type LimitsDocument, readLimits } from './limits/limits.ts';
import { tighterWhenMerged } from './limits/mergedBands.ts';
import { placeName } from './limits/placedEntries.ts';
import { reportPlaces } from './limits/placeProblems.ts';
import type { Measures } from './measure.ts';
import { folderOf, isAtOrAbove, type Kind, type OpenedDocument } from './opened.ts';
import { NO_SETTINGS, type PlanSettings } from './planning/settings.ts';
import {
  compareSessions,
  countedOn,
  readSession,
  type SessionContext,
  type SessionDocument,
} from './session/session.ts';
import { stemOf } from './stem.ts';
import { readStock, type Stock, stockOf } from './stock/stock.ts';
import type { KnownSequences } from './tightening/tightened.ts';
import { readTorque, type TorqueDocument } from './tightening/torque.ts';
import { readUnits, unitsOver } from './units.ts';
import { unitsAskedForOnce } from './unitsAskedForOnce.ts';
import type { Named } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** Every document that has a say in one engine. */
export interface EngineDocuments {
  /** The folder that holds the engine document. */
  readonly folder: string;
  readonly own: readonly OpenedDocument[];
  /** Documents directly in the folders above, the nearest folder first. */
  readonly shared: readonly OpenedDocument[];
  /** The document that a limits document extends, by the path under which the extending one is reported. */
  readonly extended: ReadonlyMap<string, OpenedDocument>;
  /** The studies that a register names, by the path under which it is reported and then by what is written in it. */
  readonly studies: ReadonlyMap<string, ReadonlyMap<string, NamedStudy>>;
}

export interface Engine {
  readonly folder: string;
  readonly document: EngineDocument;
  /** What its shop calls itself. */
  readonly shop: string | undefined;
  /** Nominal sizes, in the base unit. */
  readonly sizes: ReadonlyMap<string, Fraction>;
  /** In which it is reported. */
  readonly units: UnitsInForce;
  /** The nearest first: the order in which a band is looked for. */
  readonly limits: readonly LimitsDocument[];
  readonly instruments: ReadonlyMap<string, RegisteredInstrument>;
  /** By which readings are put right. */
  readonly knownErrors: KnownErrors;
  /** Where each part is gone over, as its shop says, by the part's name such as `main_journal`. */
  readonly grids: ReadonlyMap<string, ReadingGrid>;
  /** The parts that its shop knows. */
  readonly parts: Parts;
  /** By date; those with a diagnostic are left out. */
  readonly sessions: readonly SessionDocument[];
  /** The paths of sessions that have a diagnostic and are not judged. */
  readonly notJudged: readonly string[];
  /** Documents that have a diagnostic: what they say is not taken, or not all of it. */
  readonly broken: readonly BrokenDocument[];
  /** How its joints are tightened, by name; those with a diagnostic are left out. */
  readonly sequences: readonly TorqueDocument[];
  readonly rule: DecisionRule;
  /** How its shop plans work on it. */
  readonly planning: PlanSettings;
  /** What is on the shelves from which it may have parts. */
  readonly stock: Stock;
}

export interface BrokenDocument {
  readonly path: string;
  readonly errors: number;
}

export interface Assembled {
  /** Undefined where a document that every verdict stands on has a diagnostic. */
  readonly engine: Engine | undefined;
  readonly diagnostics: readonly Diagnostic[];
  /** Those documents, as they are reported; none where there is an engine. */
  readonly faulty: readonly string[];
  /** What its shop has added to the characteristics. */
  readonly own: readonly OwnCharacteristic[];
}

/** Builds the registry that serves an engine: ours and what its shop has added, with the parts of its layout. */
export type MeasuresFor = (own: readonly OwnCharacteristic[], layout: Layout | undefined) => Measures;

/** Reads an engine's documents together: what one leaves open another says. Pure; reports every problem. */
export function assembleEngine(documents: EngineDocuments, measuresFor: MeasuresFor): Assembled {
  const reading = new Reading(documents);
  const own = reading.ownCharacteristics();
  const engineDocument = reading.engineDocument();
  const layout = engineDocument?.root && readLayout(engineDocument.root, reading.contextOf(engineDocument));
  const measures = measuresFor(own, layout);
  if (engineDocument?.root === undefined || layout === undefined) {
    reading.problems.push(...ownProblems(own, measures, undefined));
    return { engine: undefined, diagnostics: reading.diagnostics(), faulty: reading.faulty(), own };
  }
  const document = readEngine(engineDocument.root, layout, measures, reading.contextOf(engineDocument));
  reading.problems.push(...ownProblems(own, measures, layout));
  const shops = reading.all('shop', (root, context) => readShop(root, measures.parts, context));
  const registers = reading.all('instruments', (root, context) =>
    readInstruments(root, measures, (written, register) => reading.study(written, register), context),
  );
  reading.problems.push(...sameInstruments(registers, (path) => reading.levelOf(path)));
  const limits = orderLimits(reading.limitLevels(measures, layout), reading.problems, (id, { path }) => {
    const measure = measures.find(id);
    return measure === undefined ? '' : placeName(path, layout, measure.family);
  });
  reading.problems.push(...formulaProblems(limits, { sizes: document.sizes, measures, layout }));
  for (const edition of everyEdition(limits))
    reading.problems.push(...tighterWhenMerged(edition, layout, measures));
  // Before the sessions are read: what is wrong with them is no fault of these.
  const faulty = reading.faulty();
  const grids = new Map(shops.toReversed().flatMap((shop) => [...shop.grids]));
  const sequences = reading.sequences();
  const sessions = reading.sessions({ measures, layout, grids, sequences });
  const instruments = new Map(registers.toReversed().flatMap((register) => [...register]));
  const stock = stockOf(reading.all('stock', (root, context) => readStock(root, measures.parts, context)));
  const engine: Engine = {
    folder: documents.folder,
    document,
    shop: shops.find(({ name }) => name !== undefined)?.name,
    sizes: new Map([...document.sizes].map(([name, size]) => [name, size.amount])),
    units: reading.unitsFor(engineDocument),
    limits,
    grids,
    parts: measures.parts,
    instruments,
    knownErrors: certifiedBy(instruments),
    sessions,
    notJudged: reading.notJudged(),
    broken: reading.broken(),
    sequences: sequences.documents,
    rule:
      document.decisionRule ??
      shops.find((shop) => shop.decisionRule !== undefined)?.decisionRule ??
      'simple',
    planning: shops.find(({ planning }) => planning !== undefined)?.planning ?? NO_SETTINGS,
    stock,
  };
  return {
    engine: faulty.length === 0 ? engine : undefined,
    diagnostics: reading.diagnostics(),
    faulty,
    own,
  };
}

/** Of those whose readings are put right. */
const certifiedBy = (instruments: Engine['instruments']): KnownErrors =>
  new Map(
    [...instruments]
      .filter(([, { isPutRight }]) => isPutRight)
      .map(([name, { certificates }]) => [name, certifiedErrors(certificates)]),
  );

/** One pass over an engine's documents: their contexts, and the problems found on the way. */
class Reading {
  readonly problems: Diagnostic[] = [];
  readonly #documents: EngineDocuments;
  readonly #contexts = new Map<OpenedDocument, DocumentContext>();

  constructor(documents: EngineDocuments) {
    this.#documents = documents;
  }

  #everyDocument(): readonly OpenedDocument[] {
    return [...this.#documents.own, ...this.#documents.shared, ...this.#extendedDocuments()];
  }

  #extendedDocuments(): readonly OpenedDocument[] {
    const known = new Set([...this.#documents.own, ...this.#documents.shared].map((each) => each.path));
    const found = [...this.#documents.extended.values()];
    return [...new Map(found.map((each) => [each.path, each])).values()].filter(
      (each) => !known.has(each.path),
    );
  }

  /** The one that lies highest; every other is reported, in its folder or below it. */
  engineDocument(): OpenedDocument | undefined {
    const depthOf = (each: OpenedDocument): number => folderOf(each.source.path).length;
    const [first, ...others] = this.#documents.own
      .filter((each) => each.kind === 'engine')
      .sort((a, b) => depthOf(a) - depthOf(b));
    if (first === undefined) return undefined;
    for (const other of others) this.problems.push(secondEngine(first, other));
    return first;
  }

  contextOf(document: OpenedDocument): DocumentContext {
    const known = this.#contexts.get(document);
    if (known !== undefined) return known;
    const context = { source: document.source, units: this.unitsFor(document), problems: this.problems };
    this.#contexts.set(document, context);
    return context;
  }

  /** A study that a register names, with the units of where it lies. */
  study(written: string, register: DocumentContext): ReturnType<StudyAt> {
    const found = this.#documents.studies.get(register.source.path)?.get(written);
    if (found === undefined) return undefined;
    const { document, around } = found;
    const engine = around.find(({ kind }) => kind === 'engine');
    const units = this.#unitsOver([document, engine, around.find(({ kind }) => kind === 'shop')]);
    return { document, context: { source: document.source, units, problems: [] } };
  }

  /** A document's own units over its engine's over those of the nearest shop at or above it. */
  unitsFor(document: OpenedDocument): UnitsInForce {
    const engine = this.#documents.own.includes(document)
      ? this.#documents.own.find((each) => each.kind === 'engine')
      : undefined;
    const shops = this.#everyDocument().filter(
      (each) => each.kind === 'shop' && isAtOrAbove(folderOf(each.path), folderOf(document.path)),
    );
    const nearestShop = shops.sort((a, b) => folderOf(b.path).length - folderOf(a.path).length)[0];
    return this.#unitsOver([document, engine, nearestShop], document);
  }

  #unitsOver(nearestFirst: readonly (OpenedDocument | undefined)[], reported?: OpenedDocument): UnitsInForce {
    return nearestFirst
      .map((each) => this.#statedUnits(each, each === reported))
      .reduceRight((farther, nearer) => unitsOver(nearer, farther));
  }

  #statedUnits(document: OpenedDocument | undefined, reports: boolean): UnitsInForce {
    if (document?.root === undefined) return new Map();
    const problems = reports && !this.#contexts.has(document) ? this.problems : [];
    return readUnits(document.root, { source: document.source, units: new Map(), problems });
  }

  ownCharacteristics(): readonly OwnCharacteristic[] {
    return this.#everyDocument().flatMap((each) =>
      (each.kind === 'shop' || each.kind === 'limits') && each.root !== undefined
        ? readOwnCharacteristics(each.root, this.contextOf(each))
        : [],
    );
  }

  /** Every own and shared document of a kind, the engine's first. */
  all<T>(kind: Kind, read: (root: Node, context: DocumentContext) => T): readonly T[] {
    return [...this.#documents.own, ...this.#documents.shared].flatMap((each) =>
      each.kind === kind && each.root !== undefined ? [read(each.root, this.contextOf(each))] : [],
    );
  }

  /** Everything below an engine's folder is on one level, however its files are sorted. */
  levelOf(path: string): string {
    const isOwn = this.#documents.own.some((each) => each.source.path === path);
    return isOwn ? this.#documents.folder : folderOf(path);
  }

  limitLevels(measures: Measures, layout: Layout): readonly LimitsLevel[] {
    const read = (each: OpenedDocument): LimitsDocument | undefined =>
      each.root === undefined
        ? undefined
        : readLimits(each.root, measures, this.contextOf(each), this.#documents.own.includes(each));
    const byPath = new Map<string, LimitsDocument>();
    for (const each of this.#everyDocument().filter((one) => one.kind === 'limits')) {
      const limits = read(each);
      if (limits === undefined) continue;
      byPath.set(each.source.path, limits);
      for (const [id, stated] of limits.limits) {
        const measure = measures.find(id);
        if (measure !== undefined) reportPlaces(limits, measure, stated, layout, this.contextOf(each));
      }
    }
    const levels = new Map<string, LimitsDocument[]>();
    for (const each of [...this.#documents.own, ...this.#documents.shared]) {
      const limits = byPath.get(each.source.path);
      const level = this.#documents.own.includes(each) ? this.#documents.folder : folderOf(each.path);
      if (limits !== undefined) levels.set(level, [...(levels.get(level) ?? []), limits]);
    }
    return [...levels.values()].map((documents) => ({
      documents: documents.map((limits) => ({ limits, chain: this.#chainOf(limits, byPath) })),
    }));
  }

  /** What a document extends, and what that extends; a circle is reported and cut. */
  #chainOf(limits: LimitsDocument, byPath: ReadonlyMap<string, LimitsDocument>): readonly LimitsDocument[] {
    const chain: LimitsDocument[] = [];
    let current: LimitsDocument | undefined = limits;
    while (current?.extends !== undefined) {
      const target: OpenedDocument | undefined = this.#documents.extended.get(current.path);
      const next: LimitsDocument | undefined =
        target === undefined ? undefined : byPath.get(target.source.path);
      if (next === undefined) break;
      if (next === limits || chain.includes(next)) {
        this.#reportCircle(limits);
        break;
      }
      chain.push(next);
      current = next;
    }
    return chain;
  }

  #reportCircle(limits: LimitsDocument): void {
    const document = this.#everyDocument().find((each) => each.source.path === limits.path);
    if (document === undefined || limits.extends === undefined) return;
    const place = document.source.place(limits.extends.span);
    this.problems.push(
      diagnostic(
        'extends',
        place,
        `${limits.path} extends itself in a circle`,
        'let one of them stand alone',
      ),
    );
  }

  /** The torque documents of the engine's own folder. */
  sequences(): KnownSequences {
    const own = this.#documents.own.filter((each) => each.kind === 'torque');
    const documents = own.flatMap((each) => {
      if (each.root === undefined) return [];
      const torque = readTorque(each.root, this.contextOf(each));
      return this.#hasProblem(each) ? [] : [torque];
    });
    const sound = new Set(documents.map((each) => each.name));
    const broken = new Set(own.map((each) => stemOf(each.path)).filter((name) => !sound.has(name)));
    return { documents: documents.sort((a, b) => (a.name < b.name ? -1 : 1)), broken };
  }

  sessions(around: SessionContext): readonly SessionDocument[] {
    const stems = this.#documents.own
      .filter((each) => each.kind === 'session')
      .map((each) => stemOf(each.path));
    const read = this.#documents.own.flatMap((document) =>
      document.kind !== 'session' || document.root === undefined
        ? []
        : [{ document, session: readSession(document.root, around, this.contextOf(document)) }],
    );
    const all = read.map(({ session }) => session).sort(compareSessions);
    for (const { document, session } of read) {
      for (const used of session.uses) this.#checkUsed(used, session, stems, all, this.contextOf(document));
    }
    const broken = read.filter(({ document }) => this.#hasProblem(document)).map(({ session }) => session);
    return countedOn(all.filter((each) => !broken.includes(each)));
  }

  /** Only an earlier session has anything to give; of one day the order of the files counts. */
  #checkUsed(
    { name, span }: Named,
    session: SessionDocument,
    stems: readonly string[],
    all: readonly SessionDocument[],
    context: DocumentContext,
  ): void {
    if (!stems.includes(name)) {
      const help = didYouMean(name, stems) ?? `the engine has ${stems.join(', ')}`;
      report(context, 'value', span, `no session of this engine is called ${name}`, help);
      return;
    }
    const named = all.filter((each) => each.name === name);
    if (named.length === 0 || named.some((each) => compareSessions(each, session) < 0)) return;
    const message = named.includes(session)
      ? 'a session cannot use itself'
      : `${name} comes after this session`;
    report(context, 'value', span, message, 'name sessions that were before it, or leave it out');
  }

  notJudged(): readonly string[] {
    return this.#documents.own
      .filter((each) => each.kind === 'session' && this.#hasProblem(each))
      .map((each) => each.source.path);
  }

  broken(): readonly BrokenDocument[] {
    const paths = this.diagnostics().map(({ place }) => place.path);
    return [...new Set(paths)].map((path) => ({
      path,
      errors: paths.filter((each) => each === path).length,
    }));
  }

  #hasProblem(document: OpenedDocument): boolean {
    return (
      document.problems.length > 0 || this.problems.some((each) => each.place.path === document.source.path)
    );
  }

  /** The documents that verdicts stand on and that have a problem; a file that says no known kind may be one. */
  faulty(): readonly string[] {
    const kinds: readonly (Kind | undefined)[] = ['engine', 'limits', 'instruments', 'shop', undefined];
    const found = this.#everyDocument().filter((each) => kinds.includes(each.kind) && this.#hasProblem(each));
    return [...new Set(found.map(({ source }) => source.path))];
  }

  diagnostics(): readonly Diagnostic[] {
    const all = [...this.#everyDocument().flatMap((each) => each.problems), ...this.problems];
    return unitsAskedForOnce([...new Map(all.map((each) => [keyOf(each), each])).values()]);
  }
}

function secondEngine(first: OpenedDocument, { source, root }: OpenedDocument): Diagnostic {
  const { path } = first.source;
  const isBeside = folderOf(path) === folderOf(source.path);
  const place = root === undefined ? startOfFile(source.path) : source.place(root.span);
  return diagnostic(
    'two-engines',
    place,
    isBeside
      ? `${path} is already the engine of this folder`
      : `this engine lies inside the folder of ${path}`,
    isBeside
      ? 'keep each engine in a folder of its own'
      : 'keep each engine in a folder of its own, beside the others',
  );
}

/** A fault told by the schema and by a reader at one place is one fault. */
const keyOf = ({ code, place }: Diagnostic): string => `${place.path}:${place.line}:${place.column} ${code}`;
