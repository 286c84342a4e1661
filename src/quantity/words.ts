/** `an inside micrometer`, `a bore gauge`. */
export const withArticle = (noun: string): string => `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

/** `1 engine`, `2 engines`. */
export const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
