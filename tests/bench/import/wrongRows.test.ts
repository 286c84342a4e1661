import { expect, it } from 'vitest';
import { readMapping } from '../../../src/bench/import/mapping.ts';
import { readingsOf } from '../../../src/bench/import/readings.ts';
import { parseCsv } from '../../../src/documents/csv.ts';
import { effort } from '../../effort.ts';
import { shopFiles, shopOf } from '../../shopOf.ts';

const MAPPING =
  'columns: { position: Pin, value: Side }\nmeasure: rod_side_clearance\ndelimiter: comma\ndecimal: point\nunit: in\ndecimals: as written\n';

/** Reading a spreadsheet of so many rows, each of which has a cell too many. */
function readingOf(rows: number): () => number {
  const { engine, registry } = shopOf(shopFiles('crankshaft_end_play: { new: 0.006 to 0.013 }', ''));
  const mapping = readMapping('bores.yaml', Buffer.from(MAPPING));
  if (engine === undefined || !mapping.ok) throw new Error('the shop and its mapping are sound');
  const csv = parseCsv(`Pin,Side\n${'1,0.009,x\n'.repeat(rows)}`, ',');
  return () => readingsOf(csv, mapping.value, 0, engine, registry).problems.length;
}

it('as many wrong rows as a file can hold are reported in no time', () => {
  const [few, many] = [readingOf(2_000), readingOf(16_000)];
  let problems = 0;
  const reading = effort(() => {
    problems = many();
  }, 2);
  expect(problems).toBe(16_000);
  expect(reading / effort(few)).toBeLessThan(40);
});
