import { expect, test } from 'vitest';
import type { Diagnostic } from '../../../src/diagnostic/diagnostic.ts';
import { diagnosticsLines } from '../../../src/output/check/runText.ts';
import { sourceOfLine } from '../../../src/output/escape/line.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { PLAIN } from '../../../src/output/terminal/picture.ts';

const STYLE = { paint: paintWith(0), width: 80, glyphs: PLAIN, detail: false };

const problem = (line: number, code: Diagnostic['code'] = 'document/unknown-position'): Diagnostic => ({
  code,
  message: 'the engine has no main 9',
  place: { path: 'e/s.yaml', line, column: 1, endLine: line, endColumn: 2 },
});

const printed = (problems: readonly Diagnostic[]): readonly string[] =>
  diagnosticsLines(problems, new Map(), STYLE)
    .map(sourceOfLine)
    .filter((each) => each !== '');

test('of problems of one kind in one document a hundred are printed, and the rest is counted', () => {
  const alike = Array.from({ length: 103 }, (_, index) => problem(index + 1));
  const lines = printed([...alike.slice(0, 50), problem(51, 'document/value'), ...alike.slice(50)]);
  expect(lines).toHaveLength(102);
  expect(lines[50]).toContain('e/s.yaml:51:1: error document/value');
  expect(lines.at(-2)).toContain('e/s.yaml:100:1: error');
  expect(lines.at(-1)).toBe('e/s.yaml: 3 more of document/unknown-position');
});

test('a hundred alike are all printed', () => {
  const lines = printed(Array.from({ length: 100 }, (_, index) => problem(index + 1)));
  expect(lines).toHaveLength(100);
});
