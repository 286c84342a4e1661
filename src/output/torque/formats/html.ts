import type { Writer } from '../../formats.ts';
import { sheetHtml } from '../../page/page.ts';
import { cardSheet } from '../cardSheet.ts';
import type { ShownCard } from './shownCard.ts';

export const html: Writer<ShownCard> = ({ card, origin }, context) =>
  sheetHtml(cardSheet(card, origin), context);
