import type { Formats } from '../../formats.ts';
import type { CheckFormat } from './format.ts';

/** Every format of `tenths check`. */
export const CHECK_FORMATS: Formats<CheckFormat> = {
  text: async () => (await import('./text.ts')).text,
  json: async () => (await import('./json.ts')).json,
  markdown: async () => (await import('./markdown.ts')).markdown,
  csv: async () => (await import('./csv.ts')).csv,
  junit: async () => (await import('./junit.ts')).junit,
  sarif: async () => (await import('./sarif.ts')).sarif,
  lines: async () => (await import('./lines.ts')).lines,
  github: async () => (await import('./github.ts')).github,
};
