import { tmpdir } from 'node:os';
import { expect, it } from 'vitest';
import { call } from './call.ts';

const COMMANDS: readonly (readonly string[])[] = [
  ['check'],
  ['gather'],
  ['diff'],
  ['trend'],
  ['explain'],
  ['study'],
  ['part'],
  ['instruments'],
  ['recall'],
  ['torque'],
  ['film'],
  ['plan'],
  ['report'],
  ['calc'],
  ['export'],
  ['init'],
  ['new'],
  ['new', 'engine'],
  ['new', 'session'],
  ['new', 'torque'],
  ['record'],
  ['import'],
  ['completion'],
];

it('help names every command that is shown here', async () => {
  const { out } = await call(tmpdir(), ['--help']);
  const named = [...out.matchAll(/^ {2}([a-z]+) /gm)].flatMap(([, name]) => name ?? []);
  const shown = COMMANDS.filter((words) => words.length === 1).flat();
  expect(named.filter((name) => name !== 'help')).toEqual(shown);
});

it.each(COMMANDS)(
  'help of %s %s goes from usage over options and examples to the exit codes',
  async (...words) => {
    const { out, exit } = await call(tmpdir(), [...words.filter((word) => word !== undefined), '--help']);
    expect(exit).toBe(0);
    const parts = ['Usage: tenths', 'Options:', 'Examples:\n', 'Exit codes: 0, no error;'].map((part) =>
      out.indexOf(part),
    );
    expect(parts).toEqual(parts.toSorted((a, b) => a - b));
    expect(parts[0]).toBe(0);
    expect(out.trimEnd().split('\n').at(-1)).toMatch(/^Exit codes: 0, no error;( 1, [^;]+;)? 2, /);
    const [, examples = ''] = /Examples:\n([\s\S]*?)\n\n/.exec(out) ?? [];
    for (const line of examples.split('\n')) expect(line).toMatch(/^ {2}(tenths|cat .* \| tenths) /);
  },
);
