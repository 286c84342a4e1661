import { json as inJson, spreadJson, writtenJson } from '../../escape/json.ts';
import type { Writer } from '../../formats.ts';
import type { ShownPage } from './shownPage.ts';

export const json: Writer<ShownPage> = ({ data, exit }) => writtenJson(inJson`${spreadJson(data(exit))}\n`);
