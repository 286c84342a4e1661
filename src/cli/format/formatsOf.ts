import type { Formats } from '../../output/formats.ts';
import type { FormatChoice } from './formatChoice.ts';

export interface ChosenFormat<Format> {
  readonly choice: FormatChoice;
  readonly format: Format;
}

/** Loads the formats of a call, and no other. */
export const formatsOf = <Format>(
  formats: Formats<Format>,
  choices: readonly FormatChoice[],
): Promise<readonly ChosenFormat<Format>[]> =>
  Promise.all(
    choices.map(async (choice) => {
      const load = formats[choice.format];
      if (load === undefined) throw new Error(`no format ${choice.format}`);
      return { choice, format: await load() };
    }),
  );
