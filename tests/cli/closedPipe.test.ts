import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const inProject = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

test('a check whose reader leaves at once ends quietly, with the exit code that the engine earned', async () => {
  const words = [inProject('bin/tenths.cjs'), 'check', inProject('bin/bench/engine')];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'pipe'] });
  child.stdout.destroy();
  let told = '';
  child.stderr.on('data', (text) => {
    told += text;
  });
  const [exitCode] = await once(child, 'close');
  expect(told).toBe('');
  expect(exitCode).toBe(1);
});
