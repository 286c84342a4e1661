import { ResultCache } from '../../shell/cache/resultCache.ts';
import { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import type { CachePlace } from '../../shell/world.ts';
import { type Shop, shopOf } from './shopSource.ts';

/** An engine's folder in its shop, and all that a result depends on beside the documents: plain data. */
export interface KeptSubject {
  readonly shop: Shop;
  readonly folder: string;
  readonly about: readonly unknown[];
}

/** Works results of engines out, or takes what an earlier run kept of them where that still holds. */
export class KeptResults {
  readonly #cache: ResultCache;
  // Documents that serve many engines are parsed once, though each engine asks for them anew: all that it asks is noted.
  readonly #opened = new OpenedOnce();

  constructor(place: CachePlace) {
    this.#cache = new ResultCache(place);
  }

  recall<Result, Used>(
    { shop, folder, about }: KeptSubject,
    workOut: (shop: Shop) => Result,
    use: (result: Result) => Used,
  ): Used {
    const worked = (store: Shop['store']): Result => {
      const result = workOut(shopOf(store, shop.root, this.#opened));
      this.#opened.forget(folder);
      return result;
    };
    return this.#cache.recall({ store: shop.store, folder, about: [shop.root, ...about] }, worked, use);
  }
}
