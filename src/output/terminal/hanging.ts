import { wrap } from './wrap.ts';

/** Text behind a mark, its further lines under the first word: `- `, `[ ] `, `why  `. */
export function hanging(mark: string, text: string, width: number, indent = '  '): readonly string[] {
  const room = width - indent.length - mark.length;
  return wrap(text, room).map(
    (line, index) => `${indent}${index === 0 ? mark : ' '.repeat(mark.length)}${line}`,
  );
}
