import { expect, it } from 'vitest';
import { MOST_MARKS, tooManyMarks } from '../../../src/documents/yaml/marks.ts';

const behind = (mark: string, count: number): string => `text of some length ${mark.repeat(count)}`;

it.each([
  ['line ends', '\n', 1],
  ['commas', ',', 1],
  ['square brackets', '[]', 2],
  ['braces', '{}', 2],
  ['dashes with a space', '- ', 1],
  ['colons with a space', ': ', 1],
  ['question marks with a space', '? ', 1],
])('as many %s are read as fit, and one more is refused where it stands', (_, mark, each) => {
  expect(tooManyMarks(behind(mark, MOST_MARKS / each))).toBeUndefined();
  const problem = tooManyMarks(behind(mark, MOST_MARKS / each) + mark);
  const start = behind(mark, MOST_MARKS / each).length;
  expect(problem).toEqual({
    code: 'too-big',
    span: { start, end: start + 1 },
    message: 'the file holds more than 100000 lines, commas, colons and brackets',
    help: 'split it: one file a session',
  });
});

it('a mark at the very beginning counts', () => {
  expect(tooManyMarks(','.repeat(MOST_MARKS))).toBeUndefined();
  expect(tooManyMarks(`${','.repeat(MOST_MARKS)}x,`)?.span.start).toBe(MOST_MARKS + 1);
  expect(tooManyMarks(','.repeat(MOST_MARKS + 1))?.span.start).toBe(MOST_MARKS);
});

it('signs inside a word are no marks', () => {
  expect(tooManyMarks('1-2:3?4-! -5 :6 ?7'.repeat(MOST_MARKS))).toBeUndefined();
});
