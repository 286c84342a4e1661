import { escapeHidden } from '../../diagnostic/quoted.ts';
import { letOut, type Written } from './language.ts';
import { withoutCommands } from './line.ts';

/** A spreadsheet by RFC 4180. */
export const writtenCsv = (rows: readonly (readonly (string | number)[])[]): Written =>
  letOut(rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join(''));

/** Text that begins like a formula is shown by a spreadsheet, and not worked out; in a log it is no command. */
function cellText(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const text = withoutCommands(escapeHidden(value));
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
