import type { Formats, Writer } from '../../formats.ts';
import type { ShownPage } from './shownPage.ts';

/** Every format of `tenths plan`. */
export const PLAN_FORMATS: Formats<Writer<ShownPage>> = {
  text: async () => (await import('./text.ts')).text,
  markdown: async () => (await import('./markdown.ts')).markdown,
  json: async () => (await import('./json.ts')).json,
  csv: async () => (await import('./csv.ts')).csv,
  html: async () => (await import('./html.ts')).html,
};
