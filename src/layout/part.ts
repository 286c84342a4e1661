import { BANK, ENGINE, type Family } from './family.ts';
import type { Layout } from './layout.ts';

/** A part of an engine, or parts that people name as one. */
export interface Part {
  readonly id: string;
  /** In trade words: `main shell`. */
  readonly label: string;
  readonly plural: string;
  /** What else one of them is called; an s makes them many. */
  readonly also: readonly string[];
  /** Where there is one of it: at each main, on each cylinder, or once an engine. */
  readonly family: Family;
  /** Keys of the engine's `materials` and `expansion`: it is made of the first that is stated. */
  readonly material: readonly string[];
  /** The parts that it is assembled from, by id: what is done to it is done to them. */
  readonly assembledFrom: readonly string[];
  /** Those of them that stay as they are when it is cut itself, by id: the guides of a head that is surfaced. */
  readonly carries: readonly string[];
  /** How it is made in service sizes; absent where it is not. */
  readonly sized?: Sized;
  /** The part that it runs on, by id: where several share one, they are shown together. */
  readonly runsOn?: string;
  /** By what else one of it is called: a head by its cylinder, where each cylinder has its own. */
  readonly calledBy?: Family;
  /** Of a journal, a lobe or a big end what it is of one piece with, by id: nobody sells it alone. */
  readonly ofOnePieceWith?: string;
  /** The name by which it is bought, where that is another: of a cylinder its liner. */
  readonly boughtAs?: string;
  /** Of a bore in a casting the casting, by id: it is machined, and what goes into it is bought by its size. */
  readonly boredInto?: string;
  /** A bolt or stud that pulls a housing to its shape. */
  readonly isFastener?: true;
}

export interface Sized {
  /** Ground smaller or bored larger when it is worn, in the steps that are usual. */
  readonly made?: 'under' | 'over';
  /** The part that it is bought for, by id: a shell for its journal, a piston for its cylinder. */
  readonly fits?: string;
  /** Of a shell the part that it lies in, by id: its halves may differ, and it may be larger outside. */
  readonly liesIn?: string;
  /** Bought by sets: of rings one for each bore. */
  readonly inSets?: true;
}

/** One of the ways to name a part. */
export interface PartName {
  readonly part: Part;
  readonly word: string;
}

/** The parts that are known, by id. */
export class Parts {
  readonly all: readonly Part[];
  readonly #byId: ReadonlyMap<string, Part>;
  readonly #within = new Map<Part, readonly Part[]>();
  readonly #cutWith = new Map<Part, readonly Part[]>();
  #ofOneBank: Parts | undefined;
  /** Every name by its first word and by its last: in all words of a session parts are looked for. */
  readonly #named = new Map<string, PartName[]>();

  constructor(all: readonly Part[]) {
    this.all = all;
    this.#byId = new Map(all.map((part) => [part.id, part]));
  }

  /** The names that a text in small letters begins or ends with, or begins and ends with around something else. */
  namesIn(text: string): readonly PartName[] {
    if (this.#named.size === 0) for (const part of this.all) this.#index(part);
    const words = text.split(' ');
    return [...new Set(endsOf(words).flatMap((end) => this.#named.get(end) ?? []))];
  }

  #index(part: Part): void {
    for (const word of wordsOf(part)) {
      for (const end of endsOf(word.split(' '))) {
        const same = this.#named.get(end);
        if (same === undefined) this.#named.set(end, [{ part, word }]);
        else same.push({ part, word });
      }
    }
  }

  find(id: string): Part | undefined {
    return this.#byId.get(id);
  }

  /** As an engine of a layout has them: what is one to a bank, such as a head, is one to the engine that has one bank. */
  inLayout(layout: Layout): Parts {
    if (layout.positionsOf(BANK).length > 1) return this;
    this.#ofOneBank ??= new Parts(
      this.all.map((part) => (part.family === BANK ? { ...part, family: ENGINE } : part)),
    );
    return this.#ofOneBank;
  }

  /** A part with everything that it is assembled from. */
  within(part: Part): readonly Part[] {
    const known = this.#within.get(part) ?? this.#gathered(part, ({ assembledFrom }) => assembledFrom);
    this.#within.set(part, known);
    return known;
  }

  /** A part with what is cut where it is cut itself. */
  cutWith(part: Part): readonly Part[] {
    const known = this.#cutWith.get(part) ?? this.#gathered(part, cutTogether);
    this.#cutWith.set(part, known);
    return known;
  }

  #gathered(part: Part, from: (part: Part) => readonly string[]): readonly Part[] {
    const found = new Set([part]);
    for (const each of found) for (const id of from(each)) this.#add(id, found);
    return [...found];
  }

  #add(id: string, found: Set<Part>): void {
    const part = this.find(id);
    if (part !== undefined) found.add(part);
  }
}

const cutTogether = ({ assembledFrom, carries }: Part): readonly string[] =>
  assembledFrom.filter((id) => !carries.includes(id));

/** The first word and the last, which tell where a name may stand in a text. */
const endsOf = (words: readonly string[]): readonly string[] => [`first ${words[0]}`, `last ${words.at(-1)}`];

/** Every way to name one of it or all of them, in small letters. */
export const wordsOf = ({ label, plural, also }: Part): readonly string[] => [
  label,
  plural,
  ...also.flatMap((word) => [word, `${word}s`]),
];

/** Whether a word names all of a part. */
export const isPlural = (word: string, { plural, also }: Part): boolean =>
  word === plural || also.some((each) => word === `${each}s`);
