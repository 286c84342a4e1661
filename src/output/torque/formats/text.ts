import { writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import { torqueCardLines } from '../torqueCard.ts';
import type { ShownCard } from './shownCard.ts';

export const text: Writer<ShownCard> = ({ card, origin }, { style }) =>
  writtenLines(torqueCardLines(card, origin, style));
