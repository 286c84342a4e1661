import { escapeHidden } from '../../diagnostic/quoted.ts';

/**
 * The one way for text of a file, of git or of the command line into anything shown on a terminal or in a log.
 * Controls, directions of writing, zero-width characters and lone surrogates are written out as `\u{..}`, line ends
 * and tabs as `\n`, `\r`, `\t`: the result is one line and obeys nobody. Colours are put on afterwards.
 */
export const visible = (text: string): string => asNoCommand(escapeHidden(text));

/** CI systems take a line that begins with `::` or `##[`, spaces before it or none, for a command to the log. */
const asNoCommand = (text: string): string =>
  text.replace(/^( *)(?:(:)(?=:)|(#)(?=#\[))/, (_, spaces: string, colon?: string) =>
    colon === undefined ? `${spaces}\\u{23}` : `${spaces}\\u{3a}`,
  );

/** The same for text of several lines whose line ends are meant. */
export const visibleLines = (text: string): string => text.split('\n').map(visible).join('\n');
