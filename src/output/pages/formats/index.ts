import type { Formats, Writer } from '../../formats.ts';
import type { ShownPages } from './shownPages.ts';

/** Every format of commands that show pages of more than one engine. */
export const PAGES_FORMATS: Formats<Writer<ShownPages>> = {
  text: async () => (await import('./text.ts')).text,
  markdown: async () => (await import('./markdown.ts')).markdown,
  json: async () => (await import('./json.ts')).json,
};
