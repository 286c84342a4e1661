/** A word as a shell takes it for one: in quotes where it holds a space or what a shell reads. */
export const shellWord = (word: string): string =>
  /^[\p{L}\p{N}_./@:+,=-]+$/u.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
