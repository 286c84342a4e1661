/** `an inside micrometer`, `a bore gauge`. */
export const withArticle = (noun: string): string => `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

/** `1 engine`, `2 engines`. */
export const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** `bore, stroke and taper`. */
export const inOneSentence = (names: readonly string[]): string =>
  [...(names.length > 1 ? [names.slice(0, -1).join(', ')] : []), ...names.slice(-1)].join(' and ');

/** Of a whole engine of which little was read nobody reads every name: so many, and how many more. */
export const MOST_NAMES = 24;

/** `taper, runout and 3 characteristics more`. */
export function namesOrSome(names: readonly string[], what: string): string {
  const left = names.length - MOST_NAMES;
  return left > 1 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${left} ${what} more` : names.join(', ');
}
