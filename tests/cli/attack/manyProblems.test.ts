import { expect, it } from 'vitest';
import { processorTimeSince } from '../../effort.ts';
import { callHere } from '../../inProcess.ts';
import { tried } from '../../tries.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();

const FEW = 120;
const MORE = 4;

const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index)).join('');

const HEAD = 'kind: session\nstage: teardown\ndate: 2026-02-03\n';

/** Documents of as many problems as are asked for, by what is wrong with them. */
const FAULTY: readonly (readonly [string, (count: number) => string])[] = [
  ['keys that are unknown', (count) => `${HEAD}${lines(count, (i) => `kex${i}: 1\n`)}`],
  ['keys that stand twice', (count) => `${HEAD}${lines(count, () => 'by: a\n')}`],
  ['numbers that can be read in two ways', (count) => `${HEAD}hours: [${lines(count, () => '012, ')}]\n`],
  [
    'measures that are unknown',
    (count) => `${HEAD}readings:\n${lines(count, (i) => `  - { measure: bore_${i}, value: 1 }\n`)}`,
  ],
  [
    'positions that are unknown',
    (count) =>
      `${HEAD}readings:\n  - measure: main_journal_diameter\n    at:\n${lines(count, (i) => `      ${i + 10}: 3.25\n`)}`,
  ],
  [
    'values that are none',
    (count) =>
      `${HEAD}readings:\n${lines(count, () => '  - { measure: crankshaft_end_play, value: wide }\n')}`,
  ],
  [
    'controls of a terminal',
    (count) =>
      `${HEAD}readings:\n${lines(count, () => '  - { measure: crankshaft_end_play, value: 0.005, note: "\\e" }\n')}`,
  ],
  ['brackets that close nothing', (count) => `${HEAD}${lines(count, () => '- ]\n')}`],
  [
    'tags',
    (count) =>
      `${HEAD}readings:\n${lines(count, () => '  - !!map { measure: crankshaft_end_play, value: 0.005 }\n')}`,
  ],
];

/** Time of the processor, the least of so many. */
async function took(text: string, attempts: number): Promise<number> {
  bench.put({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'engines/pump/engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: 2 }\n',
    'engines/pump/teardown.yaml': text,
  });
  const times: number[] = [];
  for (let attempt = 0; attempt < attempts; attempt++) {
    const before = process.cpuUsage();
    const { exitCode, stdout } = await callHere(['check', '--format', 'lines'], { cwd: bench.folder() });
    times.push(processorTimeSince(before));
    expect(exitCode).toBe(2);
    expect(stdout).toMatch(/^engines\/pump\/teardown.yaml:/m);
  }
  return Math.min(...times);
}

/** What takes the square of the number would take sixteen times as long, less what every call takes. */
const MOST = MORE * 3;

it.each(FAULTY)('%s: four times as many take little more than four times as long', async (_, faulty) => {
  const growth = async (attempts: number): Promise<number> =>
    (await took(faulty(FEW * MORE), attempts)) / (await took(faulty(FEW), attempts));
  const quick = await growth(2);
  tried(2);
  // Other work on the machine can lengthen a time, and lengthens the least of many less.
  expect(quick < MOST ? quick : await growth(8)).toBeLessThan(MOST);
});
