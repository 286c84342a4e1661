import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';

const bench = benchFolder();

const FILES = {
  'shop.yaml': SHOP,
  'instruments.yaml': INSTRUMENTS,
  'engines/pump/engine.yaml': ENGINE,
  'engines/pump/limits.yaml': LIMITS,
  'engines/pump/sessions/1.yaml': `kind: session
stage: rebuild
date: 2026-02-03
by: "R [K]: 1:2: error"
readings:
  - { measure: main_journal_diameter, with: mic-3-4, at: { 1: 3.2460, 2: 3.2475 } }
  - { measure: crankshaft_end_play, with: dial, value: 0.0105 }
`,
  'engines/pump/sessions/2.yaml':
    'kind: session\nstage: service\ndate: 2026-03-03\nreadings: [{ measure: crankshaft_end_ply, value: 1 }]\n',
};

interface Told {
  readonly severity: string;
  readonly code: string;
  readonly place: { readonly path: string; readonly line: number; readonly column: number };
}

const NAMES: Readonly<Record<string, string>> = { error: 'error', warning: 'warning', remark: 'info' };

it('the task that a new shop has for editors leads from every finding to its line', async () => {
  await bench.call('init', '--no-git');
  const { tasks } = JSON.parse(readFileSync(join(bench.folder(), '.vscode/tasks.json'), 'utf8'));
  const [{ command, problemMatcher }] = tasks;
  const { regexp, file, line, column, severity, code } = problemMatcher.pattern;
  bench.put(FILES);
  const words = command.split(' ').slice(1);
  const { out, exitCode } = await bench.call(...words);
  expect(exitCode).toBe(2);
  const shown = out
    .trimEnd()
    .split('\n')
    .map((each) => {
      const match = new RegExp(regexp).exec(each);
      expect(match, each).not.toBeNull();
      return [file, line, column, severity, code].map((group) => match?.[group]).join(' ');
    });
  const { diagnostics, engines } = JSON.parse((await bench.call('check', '--format', 'json')).out);
  const told: readonly Told[] = [...diagnostics, ...engines[0].state.findings];
  const expected = told.map((each) =>
    [each.place.path, each.place.line, each.place.column, NAMES[each.severity], each.code].join(' '),
  );
  expect(shown.toSorted()).toEqual(expected.toSorted());
  for (const each of ['error reading/', 'warning ', 'info ', 'error document/'])
    expect(shown.filter((one) => one.includes(each)).length, each).toBeGreaterThan(0);
});
