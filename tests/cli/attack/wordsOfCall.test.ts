import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { isCommand } from '../../output/escape/commands.ts';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { benchFolder } from '../calling.ts';
import { COMMAND_SHOP } from '../commandShop.ts';

const bench = benchFolder();
const SESSION = 'engines/pump/sessions/2026-03-20-trial.yaml';
const RECORD = ['record', 'pump', '--stage', 'trial', '--measure', 'crankshaft_end_play'];

it.each([
  '012',
  '12',
  '1_000',
  '0x1F',
  '1:30',
  '.inf',
  '~',
  'yes',
  '# c',
  '*a',
  '&a b',
  '{a: b',
  'a: b',
  '- a',
  '"',
  "'",
  'a\nb: c',
  '::error::a',
  '---',
  '%YAML 1.1',
])('%j who measures, or a note, is text of the session', async (words) => {
  bench.put(COMMAND_SHOP);
  const note = words.replace('\n', ' ');
  const { exitCode, err } = await bench.pipe(`0.009\nn ${note}\nfinish\n`, ...RECORD, '--by', words);
  expect(err).not.toContain('UNUSABLE');
  expect(exitCode).toBe(0);
  const written = readFileSync(join(bench.folder(), SESSION), 'utf8');
  for (const schema of ['core', 'yaml-1.1'] as const) {
    expect(parse(written, { schema })).toMatchObject({ by: words, readings: [{ value: { note } }] });
  }
});

it.each([
  [['record', 'pump', '--stage', 'trial', '--by']],
  [['new', 'session', 'pump', '--stage', 'trial', '--by']],
  [['import', 'sides.csv', '--stage', 'machined', '--engine', 'pump', '--by']],
  [['new', 'engine']],
  [['new', 'torque', '--passes', '40', '--engine', 'pump']],
  [['new', 'torque', 'rods', '--passes', '40', '--engine', 'pump', '--source']],
  [['init', '--name']],
])('%j refuses a control character before anything is written', async (words) => {
  bench.put(COMMAND_SHOP);
  const before = readdirSync(bench.folder(), { recursive: true });
  const { exitCode, out, err } = await bench.call(...words, 'a\u001b[31m\n::error::b');
  expect({ exitCode, out }).toEqual({ exitCode: 2, out: '' });
  expect(err).toContain('holds the control character \\u{1b}, which no document may hold');
  expect(readdirSync(bench.folder(), { recursive: true })).toEqual(before);
  expect(err.split('\n').filter((line) => isCommand(line) || HIDDEN.test(line))).toEqual([]);
  expect(err.split('\n').filter((line) => line.includes('::error') && !line.startsWith('tenths: '))).toEqual(
    [],
  );
});

it('a note of a control character is asked for once more', async () => {
  bench.put(COMMAND_SHOP);
  const { exitCode, err } = await bench.pipe('0.009\nn a\u001b[31m\nfinish\n', ...RECORD);
  expect(err).toContain('it holds a control character');
  expect(exitCode).toBe(2);
});
