import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runLine } from '../program.ts';

// The bundle leaves out what commander would start; what we start ourselves must still be there.
it('the built program can start git', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tenths-git-'));
  const { stderr, exitCode } = await runLine('tenths init', { cwd: folder });
  expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
  expect(existsSync(join(folder, '.git'))).toBe(true);
  rmSync(folder, { recursive: true });
});
