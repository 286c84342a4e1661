import type { Formats, Writer } from '../../formats.ts';
import type { ShownLines } from './shownLines.ts';

/** Every format of commands that show lines, half of them columns: `tenths explain` and `tenths study`. */
export const LINES_FORMATS: Formats<Writer<ShownLines>> = {
  text: async () => (await import('./text.ts')).text,
  markdown: async () => (await import('./markdown.ts')).markdown,
};
