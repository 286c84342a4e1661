import { escapeHidden } from '../../diagnostic/quoted.ts';
import { type Escaped, letOut, ownPiece, tagWith, type Written } from './language.ts';

/**
 * One line of a terminal or a log. A string is escaped on its way out, however it came about, so that it stays one line
 * and obeys nobody. Only a piece holds our own colours.
 */
export type Line = string | Escaped<'line'>;

/** Controls, directions of writing, zero-width characters, lone surrogates and line ends, written out. */
export const visible = escapeHidden;

export const line = tagWith<'line', string | number>((value) => visible(String(value)));

export const BELL: Escaped<'line'> = ownPiece('\u0007');

export const trimmedLine = ({ source }: Escaped<'line'>): Escaped<'line'> => ownPiece(source.trimEnd());

/** What is printed for a line. */
export const sourceOfLine = (text: Line): string => (typeof text === 'string' ? visible(text) : text.source);

/** Blocks of lines with an empty line between them. */
export const withGaps = (blocks: readonly (readonly Line[])[]): readonly Line[] =>
  blocks.flatMap((lines, index) => (index === 0 ? lines : ['', ...lines]));

/** Done last: only when lines are wrapped and put together is it known what stands at their start. */
export const writtenLines = (lines: readonly Line[]): Written =>
  letOut(withoutCommands(lines.map((each) => `${sourceOfLine(each)}\n`).join('')));

/** Without a line end, for what is typed behind it. */
export const writtenPrompt = (prompt: Line): Written => letOut(withoutCommands(sourceOfLine(prompt)));

/** Text whose line ends are meant. */
export const writtenText = (text: string): Written => writtenLines(text.replace(/\n$/, '').split('\n'));

/**
 * CI systems take a line that begins with `::`, any white space before it or none, for a command to the log, and
 * `##[…]` or `##name[…]` anywhere in it.
 */
export const withoutCommands = (text: string): string =>
  text.includes('::') || text.includes('##')
    ? text.replace(BEGINS, '$1\\u{3a}').replace(/#(?=#\w*\[)/g, '\\u{23}')
    : text;

/** Colours and a bell in front of it are nothing to a log that leaves them out. */
const BEGINS = /^((?:\u001b\[[\d;]*m|\u0007|[^\S\n])*):(?=:)/gm;
