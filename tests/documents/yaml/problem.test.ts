import { expect, test } from 'vitest';
import { type Problem, toDiagnostics } from '../../../src/documents/yaml/problem.ts';
import { sourceText } from '../../../src/documents/yaml/sourceText.ts';

const source = sourceText('a.yaml', `${'x'.repeat(300)}\n`);
const problem = (start: number, code: Problem['code'] = 'yaml'): Problem => ({
  code,
  span: { start, end: start + 2 },
  message: `of ${start}`,
});
const many = (count: number) => Array.from({ length: count }, (_, index) => problem(index));

test('problems come in the order of the file, those of one kind and place once', () => {
  const later = { ...problem(5), message: 'again', help: 'do it' };
  const all = [problem(9), { ...problem(5), help: 'do this' }, later, problem(5, 'tag'), problem(0)];
  expect(
    toDiagnostics(all, source).map(({ code, message, help, place: { column, endColumn } }) => [
      code,
      message,
      help,
      column,
      endColumn,
    ]),
  ).toEqual([
    ['document/yaml', 'of 0', undefined, 1, 3],
    ['document/yaml', 'of 5', 'do this', 6, 8],
    ['document/tag', 'of 5', undefined, 6, 8],
    ['document/yaml', 'of 9', undefined, 10, 12],
  ]);
});

test('a hundred are told; of more the rest is counted where it begins', () => {
  expect(toDiagnostics(many(100), source).map(({ message }) => message)).toEqual(
    many(100).map(({ message }) => message),
  );
  const more = toDiagnostics(many(102), source);
  expect(more).toHaveLength(101);
  expect(more.at(-1)).toEqual({
    code: 'document/yaml',
    message: '2 more problems from here on are not listed',
    help: 'correct the problems above first',
    place: { path: 'a.yaml', line: 1, column: 101, endLine: 1, endColumn: 103 },
  });
});
