declare const written: unique symbol;

/** What may leave the program: the whole of a text in its language, which only the files of this room make. */
export type Written = string & { readonly [written]: true };

/** Only for this room, and for what readline draws of a keyboard's own line: a test holds it. */
export const letOut = (text: string): Written => text as Written;

export const together = (...texts: readonly Written[]): Written => letOut(texts.join(''));

/**
 * A piece of text in a language of output, in which nothing that came from a document, from git or from a call means
 * anything. A language's own tag makes it.
 */
class Piece<Name extends string> {
  /** Only types look at it: a piece of one language is none of another. */
  declare protected readonly language: Name;
  readonly source: string;

  constructor(source: string) {
    this.source = source;
  }

  /** In a plain string it would lose its language, and be escaped a second time or not at all. */
  toString(): never {
    throw new TypeError('a piece of a language is put together by its tag');
  }
}

export type Escaped<Name extends string> = Piece<Name>;

/** A tag: its own words stand as they are; what is put into it is escaped, unless it is a piece of the language. */
export type Tag<Name extends string, Value> = (
  words: TemplateStringsArray,
  ...values: readonly (Value | Escaped<Name>)[]
) => Escaped<Name>;

export function tagWith<Name extends string, Value>(escaped: (value: Value) => string): Tag<Name, Value> {
  const sourceOf = (value: Value | Piece<Name>): string =>
    value instanceof Piece ? value.source : escaped(value);
  return (words, ...values) =>
    new Piece(words.reduce((text, word, index) => text + sourceOf(values[index - 1] as Value) + word));
}

/** Source that is our own, or escaped already: only for this room and for colours, as a test holds. */
export const ownPiece = <Name extends string>(source: string): Escaped<Name> => new Piece(source);

export function joined<Name extends string>(
  pieces: readonly Escaped<Name>[],
  between: Escaped<Name>,
): Escaped<Name> {
  return new Piece(pieces.map(({ source }) => source).join(between.source));
}
