import { listenForFailure } from '../shell/outputFailure.ts';
import { VERSION } from '../version.ts';

const [, , ...words] = process.argv;

let isWritten = true;
listenForFailure(process.stdout, (reason) => {
  isWritten = false;
  process.exitCode = 2;
  process.stderr.write(`tenths: the output cannot be written: ${reason}\n`);
});
listenForFailure(process.stderr, () => {});

if (words.length === 1 && (words[0] === '--version' || words[0] === '-V')) {
  process.stdout.write(`${VERSION}\n`);
} else {
  // Loaded only where it is needed: asking for the version is to cost little more than starting Node.
  const { run } = await import('./run.ts');
  const exitCode = await run(words, {
    workingDirectory: process.cwd(),
    environment: process.env,
    out: process.stdout,
    // Opened when something goes wrong: most runs have nothing to say there.
    err: { write: (text) => process.stderr.write(text) },
  });
  process.exitCode = isWritten ? exitCode : 2;
}
