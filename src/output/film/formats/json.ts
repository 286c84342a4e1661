import { json as inJson, writtenJson } from '../../escape/json.ts';
import type { Writer } from '../../formats.ts';
import { filmJson } from '../filmJson.ts';
import type { ShownFilms } from './shownFilms.ts';

export const json: Writer<ShownFilms> = ({ told, origin }) =>
  writtenJson(inJson`${filmJson(told, origin)}\n`);
