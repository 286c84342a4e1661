import type { Written } from './escape/language.ts';
import type { TextStyle } from './terminal/textStyle.ts';

/**
 * Every format of a kind of result, by its name: a file and a line each. An index of them imports nothing but types, since
 * help and completion read its names at every start; a format is loaded where it is asked for.
 */
export type Formats<Format> = Readonly<Record<string, () => Promise<Format>>>;

/** Gives a result, made once for all formats of a call, as the whole text of one. */
export type Writer<Result> = (result: Result, context: WriterContext) => Written;

export interface WriterContext {
  readonly style: TextStyle;
  /** The digest of a text by SHA-256, in base 64: a page names by it what it runs and wears. */
  readonly digest: (text: string) => string;
}
