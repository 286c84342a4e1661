import { type MarkedStay, marksIn } from '../../compare/parts/marks.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type BoardRow, boardRow, type DatedInstrument, emptyRow } from '../../output/report/board.ts';
import type { Origin } from '../../output/report/facts.ts';
import { addressFrom, type Links, NO_LINKS, photoAddress } from '../../output/report/links.ts';
import type { Sheet } from '../../output/report/sheet.ts';
import { shopSheet } from '../../output/report/shopSheet.ts';
import { reportWithPlan } from '../../plan/reportWithPlan.ts';
import type { CachePlace, World } from '../../shell/world.ts';
import { KeptResults } from '../shop/keptResults.ts';
import type { Shop } from '../shop/shopSource.ts';
import { textsWith } from '../shop/textsWith.ts';
import { enginePage, INDEX, partPage } from './pageNames.ts';

/** What a board takes from one engine: plain data, so that it can be kept for the next run. */
export interface BoardEngine {
  readonly diagnostics: readonly Diagnostic[];
  /** Of the documents that have diagnostics. */
  readonly texts: readonly (readonly [path: string, text: string])[];
  readonly row: BoardRow;
  /** Undefined where it has no session, or could not be read. */
  readonly sheet: Sheet | undefined;
  /** Undefined where its engine, limits or instruments file has errors. */
  readonly known: KnownEngine | undefined;
}

export interface KnownEngine {
  readonly name: string;
  readonly shop: string | undefined;
  readonly instruments: readonly DatedInstrument[];
  readonly stays: readonly MarkedStay[];
}

/** All that the pages of a board depend on beside the documents: plain data. */
export interface BoardCall {
  readonly origin: Origin;
  readonly withCustomers: boolean;
  /** Where pages lie, from the root of the shop. */
  readonly to: string;
}

/** Reads and judges engines for a board, or takes what an earlier run kept of them. */
export function boardEngines(
  shop: Shop,
  call: BoardCall,
  { workingDirectory }: World,
  place: CachePlace | undefined,
): (folder: string) => BoardEngine {
  if (place === undefined) return (folder) => boardEngine(folder, shop, call);
  const kept = new KeptResults(place);
  // Paths of documents are told from the working directory.
  const about = ['board', workingDirectory, call];
  return (folder) =>
    kept.recall(
      { shop, folder, about },
      (recorded) => boardEngine(folder, recorded, call),
      (made: BoardEngine) => made,
    );
}

function boardEngine(folder: string, shop: Shop, call: BoardCall): BoardEngine {
  const { engine, registry, diagnostics, texts } = shop.load(folder);
  const problems = { diagnostics, texts: [...textsWith(diagnostics, texts)] };
  if (engine === undefined) {
    const row = emptyRow(folder, folder, 'its documents have problems', true);
    return { ...problems, row, sheet: undefined, known: undefined };
  }
  const known = { ...knownOf(engine), stays: marksIn({ engine, registry }) };
  const report = reportWithPlan(engine, registry, {});
  const { state } = report;
  if (state === undefined) {
    const row = emptyRow(engine.document.name, folder, 'no session yet', false);
    return { ...problems, row, sheet: undefined, known };
  }
  const page = enginePage(folder);
  const { origin, withCustomers } = call;
  return {
    ...problems,
    row: boardRow(report, state, addressFrom(INDEX, page), withCustomers),
    sheet: shopSheet(report, state, origin, {
      links: linksOf(page, folder, call),
      withCustomer: withCustomers,
    }),
    known,
  };
}

const knownOf = ({ document, shop, instruments }: Engine): Omit<KnownEngine, 'stays'> => ({
  name: document.name,
  shop,
  instruments: [...instruments.values()].map(({ id, type, due }) => ({
    id,
    type,
    ...(due === undefined ? {} : { due }),
  })),
});

function linksOf(page: string, folder: string, { to }: BoardCall): Links {
  return {
    ...NO_LINKS,
    photo: (path) => photoAddress(path, folder, to === '.' ? page : `${to}/${page}`),
    part: (name, mark) => addressFrom(page, partPage(name, mark)),
    board: addressFrom(page, INDEX),
  };
}
