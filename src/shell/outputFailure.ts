import { systemCode, systemWords } from './problem.ts';

interface Failing {
  readonly on: (event: 'error', listener: (error: Error) => void) => unknown;
}

/**
 * Without a listener a stream that cannot be written ends the program with a stack trace. A reader that has gone
 * (`| head -1`) is no fault: nothing is said, and the exit code stays. Anything else is told once, in words.
 */
export function listenForFailure(stream: Failing, failed: (words: string) => void): void {
  let isTold = false;
  stream.on('error', (error) => {
    if (isTold || systemCode(error) === 'EPIPE') return;
    isTold = true;
    failed(systemWords(error));
  });
}
