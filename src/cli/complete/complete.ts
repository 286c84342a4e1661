import type { Command, Option } from 'commander';
import { line, writtenLines } from '../../output/escape/line.ts';
import type { World } from '../../shell/world.ts';
import type { Offer } from './offer.ts';
import {
  bearingNames,
  engineNames,
  measureNames,
  positionNamesFor,
  sessionNames,
  stageNames,
} from './offers.ts';

/**
 * The words that may stand where the last of `words` is being typed, a line each, with a tab before what it means.
 * Asks the commands themselves, and loads what reads documents for positions alone: it runs at every press of a key.
 */
export async function complete(program: Command, words: readonly string[], world: World): Promise<number> {
  const typed = words.at(-1) ?? '';
  const { command, rest } = commandOf(program, words.slice(0, -1));
  const offers = await offersFor(command, rest, typed, world);
  const fitting = offers.filter(({ word }) => word.startsWith(typed));
  world.out.write(writtenLines(fitting.map(({ word, means }) => line`${word}\t${means}`)));
  return 0;
}

/** The command that words lead to, and what was typed behind its name. */
function commandOf(
  program: Command,
  words: readonly string[],
): { readonly command: Command; readonly rest: readonly string[] } {
  const [first, ...rest] = words;
  const found = program.commands.find((each) => each.name() === first);
  return found === undefined ? { command: program, rest: words } : commandOf(found, rest);
}

async function offersFor(
  command: Command,
  rest: readonly string[],
  typed: string,
  world: World,
): Promise<readonly Offer[]> {
  const last = rest.at(-1) ?? '';
  const option = command.options.find((each) => isCalled(each, last));
  if (option?.required === true) return valuesOf(option, rest, world);
  if (typed.startsWith('-')) return optionsOf(command);
  const commands = command.commands
    .filter((each) => !isHidden(each))
    .map((each) => ({ word: each.name(), means: each.description() }));
  if (commands.length > 0) return rest.length === 0 ? [...commands, HELP] : commands;
  const [argument] = command.registeredArguments
    .slice(positionIn(command, rest))
    .concat(command.registeredArguments.slice(-1));
  return argument === undefined
    ? optionsOf(command)
    : [...(argument.argChoices ?? []).map(plain), ...(await named(argument.name(), rest, world))];
}

/** Most options have no short name. */
const isCalled = (option: Option, word: string): boolean =>
  word !== '' && (option.long === word || option.short === word);

const HELP: Offer = { word: '--help', means: 'print this help' };

const plain = (word: string): Offer => ({ word, means: '' });

/** Commander keeps it to itself. */
const isHidden = (command: Command): boolean => (command as Command & { _hidden?: boolean })._hidden === true;

const optionsOf = (command: Command): readonly Offer[] => [
  ...command.options
    .filter((each) => !each.hidden)
    .map((each) => ({ word: each.long ?? '', means: each.description })),
  HELP,
];

/** How many words behind a command are no options and no values of options. */
function positionIn(command: Command, rest: readonly string[]): number {
  const takesValue = (word: string): boolean =>
    command.options.some((each) => each.required && isCalled(each, word));
  return rest.filter((word, index) => !word.startsWith('-') && !takesValue(rest[index - 1] ?? '')).length;
}

const valuesOf = async (option: Option, rest: readonly string[], world: World): Promise<readonly Offer[]> =>
  option.argChoices === undefined ? named(option.attributeName(), rest, world) : option.argChoices.map(plain);

/** What an argument's or an option's own name says of the words that fit. */
async function named(name: string, rest: readonly string[], world: World): Promise<readonly Offer[]> {
  switch (name) {
    case 'engine':
    case 'where':
    case 'paths':
      return engineNames(world);
    case 'subject':
      return [...engineNames(world), ...(await bearingNames())];
    case 'session':
    case 'sessions':
      return [...sessionNames(world), ...stageNames];
    case 'measure':
      return measureNames();
    case 'what':
      return [...(await positionNamesFor(rest, world)), ...(await measureNames()), ...engineNames(world)];
    case 'instrument':
      return (await import('./named.ts')).instrumentNames(world);
    case 'mark':
    case 'part':
      return (await import('./named.ts')).markNames(world);
    case 'position':
      return positionNamesFor(rest, world);
    default:
      return [];
  }
}
