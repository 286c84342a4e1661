import type { MarkedStay } from '../../compare/parts/marks.ts';
import { shortCommit } from '../../output/diff/revision.ts';
import { writtenLines } from '../../output/escape/line.ts';
import {
  type Board,
  type BoardPart,
  type BoardRow,
  type DatedInstrument,
  dueBy,
  mostUrgentFirst,
} from '../../output/report/board.ts';
import { boardFact, type Origin, shopFacts } from '../../output/report/facts.ts';
import { addressFrom, NO_LINKS } from '../../output/report/links.ts';
import { pageSheet } from '../../output/report/pageSheet.ts';
import type { Sheet } from '../../output/report/sheet.ts';
import { plural } from '../../quantity/words.ts';
import { pathInRoot } from '../../shell/discover/root.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import type { World } from '../../shell/world.ts';
import { Progress } from '../shop/progress.ts';
import { reportProblems, sourceOf } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';
import { type BoardEngine, boardEngines } from './boardEngine.ts';
import { writePartPages } from './boardParts.ts';
import { originAt } from './origin.ts';
import { enginePage, INDEX } from './pageNames.ts';
import { FolderOfSheets } from './target.ts';

export interface BoardOptions {
  readonly to: string;
  readonly at?: string;
  readonly withCustomers?: boolean;
  /** False where what earlier runs kept is left alone. */
  readonly cache?: boolean;
}

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
  const call = {
    origin,
    withCustomers: options.withCustomers === true,
    to: pathInRoot(shop.root, sheets.root),
  };
  const engineAt = boardEngines(shop, call, world, options.cache === false ? undefined : world.cache?.());
  const made = new Made(origin, write);
  const reported = new Set<string>();
  const progress = new Progress(folders.length, world);
  for (const [index, folder] of folders.entries()) {
    progress.report(index);
    const engine = engineAt(folder);
    reportProblems(engine.diagnostics, new Map(engine.texts), world, reported);
    made.add(folder, engine);
  }
  const { parts, hasProblems } = writePartPages(made, shop, world, (path, page) => {
    const engine = (folder: string): string | undefined =>
      sheets.has(enginePage(folder)) ? addressFrom(path, enginePage(folder)) : undefined;
    const links = { ...NO_LINKS, engine, board: addressFrom(path, INDEX) };
    write(path, pageSheet(page, [...shopFacts(origin, made.shop), ...boardFact(links)], links));
  });
  sheets.write(INDEX, boardHtml(made.board(parts), { digest: sha256Base64 }));
  world.out.write(writtenLines([`${options.to}/index.html: ${plural(folders.length, 'engine')}`]));
  return made.hasProblems || hasProblems ? 2 : 0;
}

/** What a run over a shop has made so far: of each engine its row, and of its sheet only where it is. */
class Made {
  hasProblems = false;
  readonly #rows: BoardRow[] = [];
  readonly #instruments = new Map<string, DatedInstrument>();
  readonly #origin: Origin;
  readonly #write: (page: string, sheet: Sheet) => void;
  readonly stays: MarkedStay[] = [];
  readonly engines: { readonly folder: string; readonly engine: string }[] = [];
  shop = '';

  constructor(origin: Origin, write: (page: string, sheet: Sheet) => void) {
    this.#origin = origin;
    this.#write = write;
  }

  add(folder: string, { diagnostics, row, sheet, known }: BoardEngine): void {
    this.hasProblems ||= diagnostics.length > 0;
    this.#rows.push(row);
    if (sheet !== undefined) this.#write(enginePage(folder), sheet);
    if (known === undefined) return;
    this.shop = known.shop ?? this.shop;
    for (const each of known.instruments) this.#instruments.set(each.id, each);
    this.engines.push({ folder, engine: known.name });
    this.stays.push(...known.stays);
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
