import { writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import { filmLines } from '../filmText.ts';
import { whatIfLines } from '../whatIfText.ts';
import type { ShownFilms } from './shownFilms.ts';

export const text: Writer<ShownFilms> = ({ told, origin: { whatIf } }, { style }) =>
  writtenLines(whatIf === undefined ? filmLines(told, style) : whatIfLines(whatIf, told, style));
