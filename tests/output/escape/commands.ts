/**
 * Whether a runner would take a line for a command: written anew from what runners are seen to do, so that it does not
 * share a fault with what is tested. A command begins a line whose white space is cut off, `##` with a bracket stands
 * anywhere; colours are cut out first, as some logs do.
 */
export function isCommand(line: string): boolean {
  const printed = line.replaceAll(/\u001b\[[0-9;]*m/g, '').replaceAll('\u0007', '');
  return withoutSpace(printed).startsWith('::') || /##[A-Za-z0-9_]*\[/.test(printed);
}

/** What other platforms count as white space at an end, JavaScript or not. */
const SPACES =
  '\t\n\v\f\r \u0085\u00a0\u1680\u180e\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u200b\u2028\u2029\u202f\u205f\u3000\ufeff';

function withoutSpace(text: string): string {
  let from = 0;
  while (from < text.length && SPACES.includes(text.charAt(from))) from += 1;
  return text.slice(from);
}
