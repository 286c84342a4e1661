import type { FilmOrigin } from '../filmJson.ts';
import type { ToldFilms } from '../filmText.ts';

export interface ShownFilms {
  readonly told: ToldFilms;
  readonly origin: FilmOrigin;
}
