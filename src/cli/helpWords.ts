import type { Argument, HelpConfiguration, Option } from 'commander';

/** What help says of an option: its choices, and what is done without it where that is not plain. */
function optionDescription({ description, argChoices, defaultValue }: Option): string {
  const choices = argChoices === undefined ? [] : [argChoices.join(', ')];
  const otherwise = typeof defaultValue === 'string' ? [`${defaultValue} unless given`] : [];
  const said = [...choices, ...otherwise].join('; ');
  return said === '' ? description : `${description} (${said})`;
}

const argumentDescription = ({ description }: Argument): string => description;

/** Ours instead of the library's, which tells of every switch that it is off by default. */
export const HELP_WORDS: HelpConfiguration = { optionDescription, argumentDescription };
