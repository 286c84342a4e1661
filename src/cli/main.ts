import { VERSION } from '../version.ts';

// Before anything is loaded: an optimising compiler costs more than it gains in a run this short.
const [, , ...words] = process.argv;

if (words.length === 1 && (words[0] === '--version' || words[0] === '-V')) {
  process.stdout.write(`${VERSION}\n`);
} else {
  const { run } = await import('./run.ts');
  process.exitCode = await run(words, {
    workingDirectory: process.cwd(),
    environment: process.env,
    out: process.stdout,
    err: process.stderr,
  });
}
