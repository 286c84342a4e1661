import { writtenMarkdown } from '../../escape/markdown.ts';
import type { Writer } from '../../formats.ts';
import { torqueCardMarkdown } from '../torqueCardMarkdown.ts';
import type { ShownCard } from './shownCard.ts';

export const markdown: Writer<ShownCard> = ({ card, origin }) =>
  writtenMarkdown(torqueCardMarkdown(card, origin));
