import { optimise, skipOptimising } from '../shell/compiler.ts';
import { CannotWrite, standardStream } from '../shell/standardStream.ts';
import { VERSION } from '../version.ts';

const [, , ...words] = process.argv;
const out = standardStream(1);

if (words.length === 1 && (words[0] === '--version' || words[0] === '-V')) {
  out.write(`${VERSION}\n`);
} else {
  process.exitCode = await runShort();
}

/** Most runs look at one engine: only one that looks at many calls for the optimising compiler. */
async function runShort(): Promise<number> {
  skipOptimising();
  const err = standardStream(2);
  try {
    const { run } = await import('./run.ts');
    const world = { workingDirectory: process.cwd(), environment: process.env, out, err, optimise };
    return await run(words, world);
  } catch (error) {
    err.write(await troubleText(error));
    return 2;
  }
}

/** What no command expects is a fault of the program's, not of its user's. */
async function troubleText(error: unknown): Promise<string> {
  const { visible } = await import('../output/visible.ts');
  const { message, stack } = error instanceof Error ? error : new Error(String(error));
  if (error instanceof CannotWrite) return `tenths: ${message}\n`;
  const told = `tenths: this is a bug of ours: ${visible(message)}, please report it\n`;
  return process.env.TENTHS_DEBUG === undefined ? told : `${told}${stack}\n`;
}
