import { InvalidArgumentError, Option } from 'commander';
import type { Formats } from '../../output/formats.ts';

/** A format of a call, and the file that it goes into; undefined for standard output. */
export interface FormatChoice {
  readonly format: string;
  readonly file?: string;
}

/** What is printed where nothing else is asked for. */
const USUAL: readonly FormatChoice[] = [{ format: 'text' }];

export const isUsual = (choice: FormatChoice): boolean =>
  USUAL.some(({ format, file }) => format === choice.format && file === choice.file);

/** `--format NAME[:FILE]`, as often as the result is wanted; only one can go to standard output. */
export function formatOption(formats: Formats<unknown>): Option {
  const names = Object.keys(formats);
  return new Option('--format <format>', 'how to print; NAME:FILE writes a file, and may be given again')
    .choices(names)
    .default(USUAL, 'text')
    .argParser((word: string, before: readonly FormatChoice[]) =>
      before === USUAL ? [choiceOf(word, names)] : withChoice(before, choiceOf(word, names)),
    );
}

function choiceOf(word: string, names: readonly string[]): FormatChoice {
  const colon = word.indexOf(':');
  const format = colon < 0 ? word : word.slice(0, colon);
  if (!names.includes(format)) throw new InvalidArgumentError(`Allowed choices are ${names.join(', ')}.`);
  if (colon < 0) return { format };
  if (colon === word.length - 1) throw new InvalidArgumentError('Name a file behind the colon.');
  return { format, file: word.slice(colon + 1) };
}

function withChoice(before: readonly FormatChoice[], choice: FormatChoice): readonly FormatChoice[] {
  const rival = before.find(({ file }) => file === choice.file);
  if (rival === undefined) return [...before, choice];
  const where = choice.file ?? 'standard output';
  throw new InvalidArgumentError(
    `${rival.format} goes to ${where} already: write one of them into another file, as ${choice.format}:FILE.`,
  );
}
