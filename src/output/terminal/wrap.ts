import { widthOf } from './width.ts';

/** Text as lines of at most `width` columns, broken at spaces; a longer word stands on a line alone. */
export function wrap(text: string, width: number): readonly string[] {
  if (widthOf(text) <= width) return [text];
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
