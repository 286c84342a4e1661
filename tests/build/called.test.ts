import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../program.ts';

const { readCall } = await import(join(projectFolder, 'bin/called.js'));

const read = (...args: readonly string[]) =>
  readCall(
    '\nnpm run proof -- [--count 5] [--only KIND]\n',
    { count: { type: 'number', default: '5' }, seed: { type: 'number' }, only: { type: 'string' } },
    { args },
  );

describe('the commands for whoever works on the program', () => {
  it('take numbers as numbers, and leave out what was not said', () => {
    expect(read().values).toEqual({ count: 5, help: false });
    expect(read('--count', '12', '--only', 'git').values).toEqual({ count: 12, only: 'git', help: false });
  });

  it.each(['--help', '-h'])('show how they are called with %s', (word) => {
    expect(read(word)).toEqual({ shown: 'npm run proof -- [--count 5] [--only KIND]\n' });
  });

  it.each([
    ['--cuont', "Unknown option '--cuont'"],
    ['git', "Unexpected argument 'git'"],
    ['--count=many', "--count takes a number above zero, not 'many'"],
    ['--seed=', "--seed takes a number above zero, not ''"],
  ])('say in one line what is wrong with %s', (word, wrong) => {
    expect(read(word)).toEqual({ wrong: `${wrong}; --help lists the options` });
  });
});
