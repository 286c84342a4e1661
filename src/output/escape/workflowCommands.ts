import { letOut, type Written } from './language.ts';
import { visible } from './line.ts';

/** A command to the log of a CI job. */
export interface WorkflowCommand {
  readonly name: 'error' | 'warning' | 'notice';
  readonly properties: Readonly<Record<string, string | number>>;
  readonly message: string;
}

/** Each stays one command on one line, whatever is in its texts. */
export const writtenCommands = (commands: readonly WorkflowCommand[]): Written =>
  letOut(commands.map(commandLine).join(''));

function commandLine({ name, properties, message }: WorkflowCommand): string {
  const said = Object.entries(properties).map(([key, value]) => `${key}=${property(String(value))}`);
  return `::${name} ${said.join(',')}::${data(message)}\n`;
}

// Runners take these, and line ends, which are written out before, as they stand. `##` would begin a command of an older form.
const data = (text: string): string =>
  visible(text)
    .replaceAll('%', '%25')
    .replace(/#(?=#)/g, '\\u{23}');

const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
