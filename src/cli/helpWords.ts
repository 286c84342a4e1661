import type { Argument, HelpConfiguration, Option } from 'commander';

/** What help says of an option: its choices, and what is done without it where that is not plain. */
function optionDescription({
  description,
  argChoices,
  defaultValue,
  defaultValueDescription,
}: Option): string {
  const choices = argChoices === undefined ? [] : [argChoices.join(', ')];
  const usual = defaultValueDescription ?? (typeof defaultValue === 'string' ? defaultValue : undefined);
  const otherwise = usual === undefined ? [] : [`${usual} unless given`];
  const said = [...choices, ...otherwise].join('; ');
  return said === '' ? description : `${description} (${said})`;
}

const argumentDescription = ({ description }: Argument): string => description;

/** What every command says of it. */
export const ENGINE_OPTION = 'the engine: a path, its folder or its name, or a part of either';

export const AT_OPTION = 'the documents of this git revision instead of those on disk';

export const NO_CACHE = 'use no results that earlier runs kept, and keep none';

/** Ours instead of the library's, which says of every switch that it is off by default. */
export const HELP_WORDS: HelpConfiguration = {
  optionDescription,
  argumentDescription,
  // The library leaves lines as they are where a column would have less than 40.
  minWidthToWrap: 20,
};

/** What stands below a command's usage and options. */
export interface HelpEnd {
  /** Calls as they are typed, each with what it does where that is not plain. */
  readonly examples: readonly (readonly [call: string, does?: string])[];
  /** Paragraphs of what has to be known besides. */
  readonly notes?: readonly string[];
  /** What exit code 1 stands for, in a command that has it. */
  readonly failing?: string;
}

/** Examples, what has to be known besides, and the exit codes: in this order below the help of every command. */
export const helpEnd = (end: HelpEnd): string =>
  `\n${[exampleText(end), ...(end.notes ?? []), exitText(end)].join('\n\n')}`;

function exampleText({ examples }: HelpEnd): string {
  const explained = examples.filter(([, does]) => does !== undefined);
  const width = Math.max(0, ...explained.map(([call]) => call.length));
  const lines = examples.map(([call, does]) =>
    does === undefined ? `  ${call}` : `  ${call.padEnd(width)}  ${does}`,
  );
  return ['Examples:', ...lines].join('\n');
}

function exitText({ failing }: HelpEnd): string {
  const one = failing === undefined ? '' : ` 1, ${failing};`;
  return `Exit codes: 0, no error;${one} 2, a document has a problem, or the call is wrong.`;
}
