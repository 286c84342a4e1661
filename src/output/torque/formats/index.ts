import type { Formats, Writer } from '../../formats.ts';
import type { ShownCard } from './shownCard.ts';

/** Every format of `tenths torque`. */
export const TORQUE_FORMATS: Formats<Writer<ShownCard>> = {
  text: async () => (await import('./text.ts')).text,
  markdown: async () => (await import('./markdown.ts')).markdown,
  json: async () => (await import('./json.ts')).json,
  html: async () => (await import('./html.ts')).html,
};
