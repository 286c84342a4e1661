import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './program.ts';

/**
 * A case is a folder of documents with a `session.txt`: `$ tenths …` lines and what each prints. A person writes the
 * `$` lines, `TENTHS_UPDATE=1 npm test` fills in the rest, a person reads what it wrote.
 */
export const casesFolder = join(projectFolder, 'tests/cases');

export const SESSION = 'session.txt';

/** Paths of cases below tests/cases, with `/`. */
export const cases: readonly string[] = readdirSync(casesFolder, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith(`/${SESSION}`))
  .map((name) => name.slice(0, -SESSION.length - 1))
  .sort();

export const sessionOf = (name: string): string => readFileSync(join(casesFolder, name, SESSION), 'utf8');

/**
 * What the documents show is carried out: a ```console block whose first line is a `$ tenths …`. The comment
 * `<!-- in: FOLDER -->` before it names a folder of the project to do it in a copy of; blocks of one document with one
 * folder share their copy, so that a tutorial goes on. `<!-- in: an empty folder -->` begins with nothing.
 */
const BLOCK = /^(?:<!-- in: (?<folder>[^\n]+?) -->\n\n?)?```console\n(?<text>[\s\S]*?)^```$/gm;

const EMPTY = 'an empty folder';

export interface Block {
  /** Relative to the project; undefined for an empty one. */
  readonly folder: string | undefined;
  readonly text: string;
  /** Where the text begins in the document. */
  readonly start: number;
}

export function blocksOf(markdown: string): readonly Block[] {
  return [...markdown.matchAll(BLOCK)].flatMap((match) => {
    const { folder = EMPTY, text = '' } = match.groups ?? {};
    if (!/^\$ (?:[A-Z_]+=\S* )*tenths\b/m.test(text)) return [];
    const start = match.index + match[0].length - text.length - '```'.length;
    return [{ folder: folder === EMPTY ? undefined : folder, text, start }];
  });
}

/** By folder, in the order of the document. */
export const blocksByFolder = (
  blocks: readonly Block[],
): readonly (readonly [folder: string | undefined, together: readonly Block[]])[] =>
  [...new Set(blocks.map(({ folder }) => folder))].map((folder) => [
    folder,
    blocks.filter((each) => each.folder === folder),
  ]);

/** README.md and all below docs/. */
export const documents: readonly string[] = [
  'README.md',
  ...readdirSync(join(projectFolder, 'docs'), { recursive: true, encoding: 'utf8' }).map(
    (name) => `docs/${name}`,
  ),
]
  .filter((name) => name.endsWith('.md') && existsSync(join(projectFolder, name)))
  .sort();
