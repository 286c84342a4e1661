import type { Element } from '../element.ts';
import { type BandPicture, drawBand } from './band.ts';
import { type BoreMapPicture, drawBoreMap } from './boreMap.ts';
import { drawFilm, type FilmPicture } from './film.ts';
import { drawJoint, type JointPicture } from './joint.ts';
import { drawJournal, type JournalPicture } from './journal.ts';
import { drawTrend, type TrendPicture } from './trend.ts';
import { drawTurningTorque, type TurningTorquePicture } from './turningTorque.ts';

/** What a picture shows, as numbers and words; drawn, it is a tree of SVG. */
export type Picture =
  | BandPicture
  | BoreMapPicture
  | FilmPicture
  | JointPicture
  | JournalPicture
  | TrendPicture
  | TurningTorquePicture;

export function draw(picture: Picture): Element {
  switch (picture.kind) {
    case 'band':
      return drawBand(picture);
    case 'bore map':
      return drawBoreMap(picture);
    case 'film':
      return drawFilm(picture);
    case 'joint':
      return drawJoint(picture);
    case 'journal':
      return drawJournal(picture);
    case 'trend':
      return drawTrend(picture);
    case 'turning torque':
      return drawTurningTorque(picture);
  }
}
