import { callHere } from '../inProcess.ts';

export interface Called {
  readonly out: string;
  readonly err: string;
  readonly exit: number;
}

/** One call of the program in a folder, without a process of its own. `columns` makes it a terminal. */
export async function call(folder: string, words: readonly string[], columns?: number): Promise<Called> {
  const options = columns === undefined ? {} : { columns };
  const { stdout, stderr, exitCode } = await callHere(words, {
    cwd: folder,
    env: { NO_COLOR: '1' },
    ...options,
  });
  return { out: stdout, err: stderr, exit: exitCode };
}
