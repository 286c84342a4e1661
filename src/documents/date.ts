import { type DocumentContext, report } from './amount.ts';
import { textOf } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** Whether `YYYY-MM-DD` is a day of the Gregorian calendar. */
export function isCalendarDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? [];
  if (year === undefined || month === undefined || day === undefined) return false;
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  return date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day);
}

/** A date as written; one that is not in the calendar is reported. What is no date at all the schema has told. */
export function readDate(node: Node | undefined, context: DocumentContext): string | undefined {
  const text = textOf(node);
  if (node !== undefined && /^\d{4}-\d\d-\d\d$/.test(text ?? '') && !isCalendarDate(text ?? '')) {
    report(context, 'value', node.span, `${text} is not in the calendar`, 'correct the day or the month');
  }
  return text;
}
