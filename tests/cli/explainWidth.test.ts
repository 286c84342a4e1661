import { fileURLToPath } from 'node:url';
import { beforeAll, expect, it } from 'vitest';
import { widthOf } from '../../src/output/terminal/width.ts';
import { type Called, call } from './call.ts';

const EXAMPLES = fileURLToPath(new URL('../../examples', import.meta.url));

const CALLS = [
  ['engines/reservoir-pump-2', 'main_bearing_clearance'],
  ['engines/reservoir-pump-2', 'main_bearing_clearance', '3', '--session', 'teardown'],
  ['engines/reservoir-pump-2', 'crankshaft_end_play'],
];

let piped: readonly Called[] = [];
beforeAll(async () => {
  piped = await Promise.all(CALLS.map((words) => call(EXAMPLES, ['explain', ...words])));
});

it.each([60, 80, 120])(
  'what is explained fits a window of %i columns, and says all of it',
  async (columns) => {
    for (const [index, words] of CALLS.entries()) {
      const { out } = await call(EXAMPLES, ['explain', ...words], columns);
      const long = out.split('\n').filter((line) => widthOf(line) > columns);
      // A path alone on a line is not broken, nor is a call that is to be copied.
      expect(long.filter((line) => /\S\s+\S/.test(line.trim()) && !line.includes('tenths explain'))).toEqual(
        [],
      );
      const wordsOf = (text: string): readonly string[] => text.split(/\s+/).sort();
      expect(wordsOf(out)).toEqual(wordsOf(piped[index]?.out ?? ''));
    }
  },
);
