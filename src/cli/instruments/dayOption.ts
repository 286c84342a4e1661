import { isCalendarDate } from '../../documents/date.ts';
import { UsageError } from '../usage.ts';

/** A day given as an option. */
export function dayOption(option: string, text: string | undefined): string | undefined {
  if (text === undefined || isCalendarDate(text)) return text;
  throw new UsageError(`${option} ${text} is not a date`, 'write year-month-day, such as 2026-02-03');
}
