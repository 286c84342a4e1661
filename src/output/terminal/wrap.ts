import { visible } from '../escape/line.ts';
import { widthOf } from './width.ts';

/** Text as lines of at most `width` columns, broken at spaces; a longer word stands on a line alone. */
export function wrap(text: string, width: number): readonly string[] {
  if (widthOf(text) <= width) return [text];
  const lines: string[] = [];
  let line = '';
  // Made visible first: a line end of others is no place to break at.
  for (const word of visible(text).split(' ')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
