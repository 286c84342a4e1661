import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';
import { letOut, type Written } from '../../output/escape/language.ts';
import type { Input, Output } from '../world.ts';
import { watchSignals } from './signals.ts';

/** The side of a conversation that is not the keyboard. */
export interface PromptDialogue {
  readonly opening: () => Written;
  readonly prompt: () => { readonly above: Written; readonly prompt: Written };
  /** Synchronous: the next line is not looked at before it returns. */
  readonly hear: (line: string, isTyped: boolean) => 'go on' | 'finished' | 'failed';
}

/** `finished`, or the exit code of a conversation that was left. */
export type Ending = 'finished' | number;

/**
 * One interface for the whole conversation, a synchronous handler, no history: with anything else readings that arrive
 * in a burst are lost or run into one another, as at a terminal with a prompt that waits 2 ms for its handler. `prompt(true)`
 * keeps the cursor behind what was typed already, which is nothing while the handler does not wait.
 */
export function promptLoop(talk: PromptDialogue, input: Input, screen: Output): Promise<Ending> {
  const isTyped = input.isTTY === true;
  let isSeen = true;
  const out: Output = {
    ...screen,
    write: (text) => {
      isSeen = screen.write(text) !== false && isSeen;
    },
  };
  return new Promise((resolve, reject) => {
    const lines = createInterface({
      input,
      ...(isTyped ? { output: streamOf(out) } : {}),
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
      // What nobody can see is not to be answered: `tenths record | tee log`, and tee is gone.
      if (!isSeen) end(2);
    };
    const hear = (line: string): void => {
      const next = talk.hear(line, isTyped);
      if (next === 'go on') ask();
      else end(next === 'finished' ? 'finished' : 2);
    };
    lines.on('line', (line) => {
      // A closed interface still hands out the lines that it holds.
      if (ending !== undefined) return;
      try {
        hear(line);
      } catch (error) {
        // Before the end, which settles it: a fault of ours must not look like a conversation that was left.
        reject(error);
        end(2);
      }
    });
    lines.on('SIGINT', () => end(130));
    // The end of a pipe is the end of the readings; of a keyboard it may be a cable.
    lines.on('close', () => end(isTyped ? 130 : 'finished'));
    if (isTyped) out.write(talk.opening());
    ask();
  });
}

/** The output as a stream, which is what the interface draws its prompt on; nothing waits in it. */
function streamOf(out: Output): Writable & { readonly columns: number | undefined } {
  const stream = new Writable({
    decodeStrings: false,
    write: (text: string, _encoding, written) => {
      // What was typed, and where the cursor goes: the library's own, at a keyboard alone.
      out.write(letOut(text));
      written();
    },
  });
  return Object.assign(stream, { columns: out.columns, isTTY: true });
}
