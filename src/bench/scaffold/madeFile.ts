/** A file that a command wants to stand in the shop. Decided first and carried out afterwards. */
export interface MadeFile {
  /** Relative to the shop's root, with `/`. */
  readonly path: string;
  readonly text: string;
  /** What is done where a file of that name stands already: it is kept, or gets the lines that it lacks. */
  readonly where: 'absent' | 'add lines';
  readonly executable: boolean;
}

export const madeFile = (
  path: string,
  text: string,
  more: Partial<Pick<MadeFile, 'where' | 'executable'>> = {},
): MadeFile => ({ path, text, where: 'absent', executable: false, ...more });

/** The lines of a text that another lacks, put at its end; undefined where it lacks none. */
export function withMissingLines(before: string, wanted: string): string | undefined {
  const has = new Set(before.split(/\r?\n/).map((line) => line.trim()));
  const missing = wanted
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#') && !has.has(line.trim()));
  if (missing.length === 0) return undefined;
  const lineBreak = before.includes('\r\n') ? '\r\n' : '\n';
  const gap = before === '' || before.endsWith('\n') ? '' : lineBreak;
  return `${before}${gap}${missing.map((line) => `${line}${lineBreak}`).join('')}`;
}

/** From a folder of the shop to a file at its root: `../../` for `engines/pump-2`. */
export const upFrom = (folder: string): string =>
  folder === '' || folder === '.'
    ? ''
    : folder
        .split('/')
        .map(() => '../')
        .join('');

/** Where a shop keeps its copy of the schemas: editors find them without a network. */
export const SCHEMA_FOLDER = '.tenths/schemas';

export const schemaPath = (folder: string, kind: string): string =>
  `${upFrom(folder)}${SCHEMA_FOLDER}/${kind}.json`;
