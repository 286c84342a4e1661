import { json as inJson, spreadJson, writtenJson } from '../../escape/json.ts';
import type { Writer } from '../../formats.ts';
import { pagesJson } from '../pagesJson.ts';
import type { ShownPages } from './shownPages.ts';

export const json: Writer<ShownPages> = ({ name, pagesFor, exit }) =>
  writtenJson(inJson`${spreadJson(pagesJson(name, pagesFor('the shop'), exit))}\n`);
