import type { Finding } from '../../checks/finding.ts';
import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { startOfFile } from '../../diagnostic/place.ts';
import type { Found, Texts } from '../../shell/discover/loadEngines.ts';
import type { Problem } from '../../shell/problem.ts';
import { partProblems } from '../parts/shelf.ts';
import type { ShopPaths } from '../shop/resolveShop.ts';
import { unreadReported } from './unreadReported.ts';

interface Trouble {
  readonly diagnostics: readonly Diagnostic[];
  readonly texts: Texts;
  readonly findings: readonly Finding[];
}

/** What is wrong with documents that are no engine's, with files that were not read, and with folders. */
export function* outsideEngines(found: Found, { shop, selected }: ShopPaths): Iterable<Trouble> {
  const named = selected.map(({ file }) => file);
  for (const path of found.others) {
    const { diagnostics, texts } = shop.loader.checkOther(path, named.includes(path));
    yield { diagnostics: [...diagnostics, ...partProblems(path, shop)], texts, findings: [] };
  }
  yield { ...unreadReported(found.unread), texts: new Map() };
  yield { diagnostics: shop.store.problems().map(unlistable), texts: new Map(), findings: [] };
}

const unlistable = ({ message, help }: Problem): Diagnostic =>
  diagnostic('unreadable', startOfFile('.'), message, help);
