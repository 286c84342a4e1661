// Shows the example shop: where each of its engines stands. Nothing of it is out, so its check ends with 0.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('tenths.cjs', import.meta.url));
const examples = fileURLToPath(new URL('../examples', import.meta.url));
const { status } = spawnSync(process.execPath, [program, 'check', examples], { stdio: 'inherit' });
if (status !== 0) {
  process.stderr.write(`the example shop should end its check with 0, and it ended with ${status}\n`);
  process.exitCode = 1;
}
