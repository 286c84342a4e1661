import stringWidth from 'string-width';
import { type Line, sourceOfLine } from '../escape/line.ts';
import { ONE_COLUMN_EACH } from './oneColumnEach.ts';

/**
 * The columns that a line takes when it is printed; colours take none. Looking up every character's width is slow, and
 * the first lookup reads tables for longer than an engine takes to judge.
 */
export function widthOf(text: Line): number {
  if (typeof text === 'string' && ONE_COLUMN_EACH.test(text)) return text.length;
  const printed = uncoloured(text);
  return ONE_COLUMN_EACH.test(printed) ? printed.length : stringWidth(printed);
}

/** What is printed of a line, in no colour. */
export const uncoloured = (text: Line): string => sourceOfLine(text).replace(/\u001b\[\d+m/g, '');
