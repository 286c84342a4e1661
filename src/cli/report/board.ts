import { reportEngine } from '../../checks/judge/report.ts';
import { type MarkedStay, marksIn } from '../../compare/parts/marks.ts';
import type { RegisteredInstrument } from '../../documents/engine/instruments.ts';
import { shortCommit } from '../../output/diff/revision.ts';
import { writtenLines } from '../../output/escape/line.ts';
import {
  type Board,
  type BoardPart,
  type BoardRow,
  boardRow,
  dueBy,
  emptyRow,
  mostUrgentFirst,
} from '../../output/report/board.ts';
import { boardFact, type Origin, shopFacts } from '../../output/report/facts.ts';
import { addressFrom, type Links, NO_LINKS, photoAddress } from '../../output/report/links.ts';
import { pageSheet } from '../../output/report/pageSheet.ts';
import type { Sheet } from '../../output/report/sheet.ts';
import { shopSheet } from '../../output/report/shopSheet.ts';
import { pathInRoot } from '../../shell/discover/root.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import type { World } from '../../shell/world.ts';
import { Progress } from '../shop/progress.ts';
import { type ReadEngine, readEngine, sourceOf } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';
import { writePartPages } from './boardParts.ts';
import { originAt } from './origin.ts';
import { enginePage, partPage } from './pageNames.ts';
import { FolderOfSheets } from './target.ts';

export interface BoardOptions {
  readonly to: string;
  readonly at?: string;
  readonly withCustomers?: boolean;
}

const INDEX = 'index.html';

/** More than these are worth compiling for. */
const FEW = 30;

/** Writes a page of every engine and the board that leads to them; 2 where a document has a problem. */
export async function board(options: BoardOptions, world: World): Promise<number> {
  const { sheetHtml, boardHtml } = await import('../../output/page/page.ts');
  const source = sourceOf(options.at, '.', world);
  const shop = source.locate('.')?.shop;
  const folders = shop?.loader.find({ folders: ['.'] }).engines ?? [];
  if (shop === undefined || folders.length === 0)
    throw new UsageError('no engine found here', 'an engine is a folder with a document of kind: engine');
  if (folders.length > FEW) world.optimise?.();
  const sheets = new FolderOfSheets(options.to, world);
  const origin = originAt(source.revision, world);
  const write = (page: string, sheet: Sheet): void =>
    sheets.write(page, sheetHtml(sheet, { digest: sha256Base64 }));
  const placeOf = (page: string): string => pathInRoot(shop.root, `${sheets.root}/${page}`);
  const made = new Made(origin, options, placeOf, write);
  const reported = new Set<string>();
  const progress = new Progress(folders.length, world);
  for (const [index, folder] of folders.entries()) {
    progress.report(index);
    made.add(folder, readEngine({ shop, folder }, world, reported));
  }
  const { parts, hasProblems } = writePartPages(made, shop, world, (path, page) => {
    const engine = (folder: string): string | undefined =>
      sheets.has(enginePage(folder)) ? addressFrom(path, enginePage(folder)) : undefined;
    const links = { ...NO_LINKS, engine, board: addressFrom(path, INDEX) };
    write(path, pageSheet(page, [...shopFacts(origin, made.shop), ...boardFact(links)], links));
  });
  sheets.write(INDEX, boardHtml(made.board(parts), { digest: sha256Base64 }));
  world.out.write(writtenLines([`${options.to}/index.html: ${folders.length} engines`]));
  return made.hasProblems || hasProblems ? 2 : 0;
}

/** What a run over a shop has made so far: of each engine its row, and of its sheet only where it is. */
class Made {
  hasProblems = false;
  readonly #rows: BoardRow[] = [];
  readonly #instruments = new Map<string, RegisteredInstrument>();
  readonly #origin: Origin;
  readonly #options: BoardOptions;
  readonly #placeOf: (page: string) => string;
  readonly #write: (page: string, sheet: Sheet) => void;
  readonly stays: MarkedStay[] = [];
  readonly engines: { readonly folder: string; readonly engine: string }[] = [];
  shop = '';

  /** `placeOf` gives where a page lies, from the root of the shop. */
  constructor(
    origin: Origin,
    options: BoardOptions,
    placeOf: (page: string) => string,
    write: (page: string, sheet: Sheet) => void,
  ) {
    this.#origin = origin;
    this.#options = options;
    this.#placeOf = placeOf;
    this.#write = write;
  }

  add(folder: string, read: ReadEngine): void {
    this.hasProblems ||= read.hasProblems;
    this.#rows.push(this.#rowOf(folder, read));
  }

  #rowOf(folder: string, { engine, registry }: ReadEngine): BoardRow {
    if (engine === undefined) return emptyRow(folder, folder, 'its documents have problems', true);
    this.shop = engine.shop ?? this.shop;
    for (const [id, each] of engine.instruments) this.#instruments.set(id, each);
    this.engines.push({ folder, engine: engine.document.name });
    this.stays.push(...marksIn({ engine, registry }));
    const report = reportEngine(engine, registry, {});
    const { state } = report;
    if (state === undefined) return emptyRow(engine.document.name, folder, 'no session yet', false);
    const withCustomers = this.#options.withCustomers === true;
    const page = enginePage(folder);
    const links = this.#linksOf(page, folder);
    this.#write(page, shopSheet(report, state, this.#origin, { links, withCustomer: withCustomers }));
    return boardRow(report, state, addressFrom(INDEX, page), withCustomers);
  }

  #linksOf(page: string, folder: string): Links {
    return {
      ...NO_LINKS,
      photo: (path) => photoAddress(path, folder, this.#placeOf(page)),
      part: (name, mark) => addressFrom(page, partPage(name, mark)),
      board: addressFrom(page, INDEX),
    };
  }

  /** As of the commit's day, else that of the latest session: never of the clock's. */
  board(parts: readonly BoardPart[]): Board {
    const { commit } = this.#origin;
    const latest =
      this.#rows
        .map(({ since }) => since)
        .sort()
        .at(-1) ?? '';
    const day = commit?.date ?? latest;
    const from = commit === undefined ? '' : `, commit ${shortCommit(commit)}`;
    return {
      title: [this.shop, 'board'].filter(Boolean).join(': '),
      about: `as of ${day}${from}`,
      rows: mostUrgentFirst(this.#rows),
      due: dueBy(this.#instruments.values(), day),
      parts,
    };
  }
}
