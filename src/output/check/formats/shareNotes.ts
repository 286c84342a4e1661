import type { Diagnostic } from '../../../diagnostic/diagnostic.ts';

/** What JSON of a share holds so that gathered shares are as one run: told by that alone. */
export interface ShareJson {
  readonly number: number;
  readonly of: number;
  /** How many engines all shares have together. */
  readonly total: number;
  readonly detail: boolean;
  /** In the order of the engines: how many of the diagnostics and follow-ups are of each; others come after them. */
  readonly engines: readonly { readonly diagnostics: number; readonly follow_ups: number }[];
  /** Of documents that have problems, by their paths. */
  readonly texts: Readonly<Record<string, string>>;
}

export class ShareNotes {
  readonly #engines: { diagnostics: number; follow_ups: number }[] = [];
  readonly #texts = new Map<string, string>();
  #pending = 0;

  diagnostics(list: readonly Diagnostic[], texts: ReadonlyMap<string, string>): void {
    this.#pending += list.length;
    for (const { place } of list) {
      const text = texts.get(place.path);
      if (text !== undefined) this.#texts.set(place.path, text);
    }
  }

  engine(followUps: number): void {
    this.#engines.push({ diagnostics: this.#pending, follow_ups: followUps });
    this.#pending = 0;
  }

  json(share: Pick<ShareJson, 'number' | 'of' | 'total'>, detail: boolean): ShareJson {
    const { number, of, total } = share;
    return { number, of, total, detail, engines: this.#engines, texts: Object.fromEntries(this.#texts) };
  }
}
