import type { Formats, Writer } from '../../formats.ts';
import type { ShownTrend } from './shownTrend.ts';

/** Every format of `tenths trend`. */
export const TREND_FORMATS: Formats<Writer<ShownTrend>> = {
  text: async () => (await import('./text.ts')).text,
  markdown: async () => (await import('./markdown.ts')).markdown,
  json: async () => (await import('./json.ts')).json,
  csv: async () => (await import('./csv.ts')).csv,
  html: async () => (await import('./html.ts')).html,
};
