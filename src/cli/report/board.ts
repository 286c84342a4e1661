import { reportEngine } from '../../checks/judge/report.ts';
import type { RegisteredInstrument } from '../../documents/engine/instruments.ts';
import { shortCommit } from '../../output/diff/revision.ts';
import { writtenLines } from '../../output/escape/line.ts';
import {
  type Board,
  type BoardRow,
  boardRow,
  dueBy,
  emptyRow,
  mostUrgentFirst,
} from '../../output/report/board.ts';
import type { Origin } from '../../output/report/facts.ts';
import type { Sheet } from '../../output/report/sheet.ts';
import { shopSheet } from '../../output/report/shopSheet.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import type { World } from '../../shell/world.ts';
import { type ReadEngine, readEngine, sourceOf } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';
import { originAt } from './origin.ts';
import { FolderOfSheets } from './target.ts';

export interface BoardOptions {
  readonly to: string;
  readonly at?: string;
  readonly withCustomers?: boolean;
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
  const made = new Made(origin, options, (folder, sheet) =>
    sheets.write(folder, sheetHtml(sheet, { digest: sha256Base64 })),
  );
  const reported = new Set<string>();
  for (const [index, folder] of folders.entries()) {
    tellProgress(index, folders.length, world);
    made.add(folder, readEngine({ shop, folder }, world, reported));
  }
  sheets.writeIndex(boardHtml(made.board(), { digest: sha256Base64 }));
  world.out.write(writtenLines([`${options.to}/index.html: ${folders.length} engines`]));
  return made.hasProblems ? 2 : 0;
}

/** Now and then, to somebody who waits. */
function tellProgress(index: number, count: number, { err }: World): void {
  if (err.isTTY === true && index > 0 && index % 50 === 0)
    err.write(writtenLines([`${index} of ${count} engines`]));
}

/** What a run over a shop has made so far: of each engine its row, and of its sheet only where it is. */
class Made {
  hasProblems = false;
  readonly #rows: BoardRow[] = [];
  readonly #instruments = new Map<string, RegisteredInstrument>();
  readonly #origin: Origin;
  readonly #options: BoardOptions;
  readonly #write: (folder: string, sheet: Sheet) => string;
  #shop = '';

  constructor(origin: Origin, options: BoardOptions, write: (folder: string, sheet: Sheet) => string) {
    this.#origin = origin;
    this.#options = options;
    this.#write = write;
  }

  add(folder: string, read: ReadEngine): void {
    this.hasProblems ||= read.hasProblems;
    this.#rows.push(this.#rowOf(folder, read));
  }

  #rowOf(folder: string, { engine, registry }: ReadEngine): BoardRow {
    if (engine === undefined) return emptyRow(folder, folder, 'its documents have problems', true);
    this.#shop = engine.shop ?? this.#shop;
    for (const [id, each] of engine.instruments) this.#instruments.set(id, each);
    const report = reportEngine(engine, registry, {});
    const { state } = report;
    if (state === undefined) return emptyRow(engine.document.name, folder, 'no session yet', false);
    const withCustomers = this.#options.withCustomers === true;
    const page = this.#write(folder, shopSheet(report, state, this.#origin, withCustomers));
    return boardRow(report, state, page, withCustomers);
  }

  /** As of the commit's day, else that of the latest session: never of the clock's. */
  board(): Board {
    const { commit } = this.#origin;
    const latest =
      this.#rows
        .map(({ since }) => since)
        .sort()
        .at(-1) ?? '';
    const day = commit?.date ?? latest;
    const from = commit === undefined ? '' : `, commit ${shortCommit(commit)}`;
    return {
      title: [this.#shop, 'board'].filter(Boolean).join(': '),
      about: `as of ${day}${from}`,
      rows: mostUrgentFirst(this.#rows),
      due: dueBy(this.#instruments.values(), day),
    };
  }
}
