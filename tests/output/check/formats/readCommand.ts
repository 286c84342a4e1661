/** A command to the log of a job, as a runner takes it apart. */
export interface Command {
  readonly name: string;
  readonly properties: Readonly<Record<string, string>>;
  readonly message: string;
}

/** Written anew from what runners are seen to do, so that it shares no fault with what is tested. */
export function readCommand(line: string): Command | undefined {
  const trimmed = line.trimStart();
  const end = trimmed.indexOf('::', 2);
  if (!trimmed.startsWith('::') || end < 0) return undefined;
  const [name = '', ...rest] = trimmed.slice(2, end).split(' ');
  const properties = rest.join(' ').split(',').filter(Boolean);
  return {
    name,
    properties: Object.fromEntries(
      properties.map((each) => {
        const [key = '', ...value] = each.split('=');
        return [
          key,
          decoded(value.join('=')).replaceAll('%3A', ':').replaceAll('%2C', ',').replaceAll('%25', '%'),
        ];
      }),
    ),
    message: decoded(trimmed.slice(end + 2)).replaceAll('%25', '%'),
  };
}

const decoded = (text: string): string => text.replaceAll('%0D', '\r').replaceAll('%0A', '\n');
