import { json as inJson, spreadJson, writtenJson } from '../../escape/json.ts';
import type { Writer } from '../../formats.ts';
import { torqueCardJson } from '../torqueCardJson.ts';
import type { ShownCard } from './shownCard.ts';

export const json: Writer<ShownCard> = ({ card, origin, exit }) =>
  writtenJson(inJson`${spreadJson(torqueCardJson(card, origin, exit))}\n`);
