import type { Formats, Writer } from '../../formats.ts';
import type { ShownDiff } from './shownDiff.ts';

/** Every format of `tenths diff`. */
export const DIFF_FORMATS: Formats<Writer<ShownDiff>> = {
  text: async () => (await import('./text.ts')).text,
  json: async () => (await import('./json.ts')).json,
  markdown: async () => (await import('./markdown.ts')).markdown,
  html: async () => (await import('./html.ts')).html,
};
