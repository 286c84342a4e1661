// Shows the example shop. It holds readings that are out, so a check that ends with 1 is what is wanted.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('tenths.cjs', import.meta.url));
const examples = fileURLToPath(new URL('../examples', import.meta.url));
const { status } = spawnSync(process.execPath, [program, 'check', examples], { stdio: 'inherit' });
if (status !== 1) {
  process.stderr.write(`the example shop should end its check with 1, and it ended with ${status}\n`);
  process.exitCode = 1;
}
