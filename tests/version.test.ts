import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../src/version.ts';
import { projectFolder, runLine } from './program.ts';

const { version } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8'));

describe('the version', () => {
  it('is the same in the program and in package.json', () => {
    expect(VERSION).toBe(version);
  });

  it.each(['--version', '-V'])('is all that %s prints', async (option) => {
    expect(await runLine(`tenths ${option}`, { cwd: projectFolder })).toEqual({
      stdout: `${version}\n`,
      stderr: '',
      exitCode: 0,
    });
  });
});
