import type { Formats, Writer } from '../../formats.ts';
import type { ShownFilms } from './shownFilms.ts';

/** Every format of `tenths film`. */
export const FILM_FORMATS: Formats<Writer<ShownFilms>> = {
  text: async () => (await import('./text.ts')).text,
  json: async () => (await import('./json.ts')).json,
};
