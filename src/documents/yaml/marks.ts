import type { Problem } from './problem.ts';

/**
 * Line ends, commas, brackets, and dashes, colons and question marks with a space behind them: every value comes
 * with one or two, and the parser's time and memory grow with them. 256 KiB of sessions have some 40,000, of nothing
 * but dense grids of readings 70,000.
 */
export const MOST_MARKS = 100_000;

/** Asked before the text is parsed: a quarter of a MiB of brackets would take the parser seconds. */
export function tooManyMarks(text: string): Problem | undefined {
  if (text.length <= MOST_MARKS) return undefined;
  let marks = 0;
  for (let i = 0; i < text.length; i++) {
    if (isMark(text, i)) marks += 1;
    if (marks > MOST_MARKS) return tooMany(i);
  }
  return undefined;
}

function isMark(text: string, i: number): boolean {
  switch (text.charCodeAt(i)) {
    case 0x0a: // line feed
    case 0x2c: // ,
    case 0x5b: // [
    case 0x5d: // ]
    case 0x7b: // {
    case 0x7d: // }
      return true;
    case 0x2d: // -
    case 0x3a: // :
    case 0x3f: // ?
      return text.charCodeAt(i + 1) <= 0x20;
    default:
      return false;
  }
}

const tooMany = (start: number): Problem => ({
  code: 'too-big',
  span: { start, end: start + 1 },
  message: `the file holds more than ${MOST_MARKS} lines, commas, colons and brackets`,
  help: 'split it: one file a session',
});
