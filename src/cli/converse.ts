import { createInterface } from 'node:readline';
import { watchSignals } from '../shell/signals.ts';
import type { World } from '../shell/world.ts';

/** The side of a conversation that is not the keyboard. */
export interface Talk {
  readonly opening: () => string;
  readonly prompt: () => { readonly above: string; readonly prompt: string };
  /** Synchronous: the next line is not looked at before it returns. */
  readonly hear: (line: string, isTyped: boolean) => 'go on' | 'finished' | 'failed';
}

/** `finished`, or the exit code of a conversation that was left. */
export type Ending = 'finished' | number;

/**
 * One interface for the whole conversation, a synchronous handler, `prompt(true)`, no history: with anything else
 * readings that arrive in a burst are lost or run into one another, which was measured.
 */
export function converse(talk: Talk, world: World): Promise<Ending> {
  const { in: input, out } = world;
  if (input === undefined) return Promise.resolve(2);
  const isTyped = input.isTTY === true;
  return new Promise((resolve) => {
    const lines = createInterface({
      input,
      ...(isTyped ? { output: out as NodeJS.WritableStream & typeof out } : {}),
      terminal: isTyped,
      historySize: 0,
      // Between the two halves of a line end a disk may take its time.
      crlfDelay: Number.POSITIVE_INFINITY,
    });
    let ending: Ending | undefined;
    const end = (how: Ending): void => {
      if (ending !== undefined) return;
      ending = how;
      signals.stop();
      lines.close();
      resolve(how);
    };
    const signals = watchSignals(() => end(signals.exitCode() ?? 1));
    const ask = (): void => {
      if (!isTyped) return;
      const { above, prompt } = talk.prompt();
      out.write(above);
      lines.setPrompt(prompt);
      lines.prompt(true);
    };
    // A closed interface still hands out the lines that it holds.
    lines.on('line', (line) => {
      if (ending !== undefined) return;
      const next = talk.hear(line, isTyped);
      if (next === 'go on') ask();
      else end(next === 'finished' ? 'finished' : 2);
    });
    lines.on('SIGINT', () => end(130));
    // The end of a pipe is the end of the readings; of a keyboard it may be a cable.
    lines.on('close', () => end(isTyped ? 130 : 'finished'));
    if (isTyped) out.write(talk.opening());
    ask();
  });
}
