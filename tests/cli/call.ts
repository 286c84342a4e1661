import { run } from '../../src/cli/run.ts';

export interface Called {
  readonly out: string;
  readonly err: string;
  readonly exit: number;
}

/** One call of the program in a folder, without a process of its own. `columns` makes it a terminal. */
export async function call(folder: string, words: readonly string[], columns?: number): Promise<Called> {
  const told = { out: '', err: '' };
  const stream = (name: 'out' | 'err') => ({
    ...(columns === undefined ? {} : { isTTY: true, columns }),
    write: (text: string) => {
      told[name] += text;
    },
  });
  const exit = await run(words, {
    workingDirectory: folder,
    environment: { NO_COLOR: '1', LANG: 'C.UTF-8' },
    out: stream('out'),
    err: stream('err'),
  });
  return { ...told, exit };
}
