import { escapeHidden } from '../../diagnostic/quoted.ts';
import { type Escaped, joined, letOut, ownPiece, tagWith, type Written } from './language.ts';
import { type Line, writtenLines } from './line.ts';

export type Markdown = Escaped<'markdown'>;

/** Text of others inside Markdown is shown as it stands: never markup, a link, a picture, a mention or a reference. */
export const md = tagWith<'markdown', string | number>((value) => escapeMarkdown(String(value)));

const escapeMarkdown = (text: string): string =>
  escapeHidden(text)
    .replace(/\s+/g, ' ')
    .trim()
    .replace(MEANS_MORE, reference)
    .replace(BEGINS, (_, before: string, sign: string) => `${before}${reference(sign)}`)
    .replace(REFERS, `$&${NOTHING}`);

const reference = (character: string): string => `&#${character.charCodeAt(0)};`;

const MEANS_MORE = /[\\`*_{}[\]<>#!|~&@$]/g;

/** Of a list, a rule, a heading or a command to a log, where a line begins; before a digit a point or a sign is part of a number. */
const BEGINS = /^(\d*)([-+=.):])(?!\d)/;

/**
 * Hosts look for links, mentions (`@name`), references (`#1`, `!1`, `GH-1`) and `:signs:` again when all is read and a
 * numeric reference has become its character. A space of no width behind the first character keeps them from it. What
 * stands behind the text may end a sign that the text begins.
 */
const REFERS =
  /(?:&#(?:33|35|36|38|64|126);|[%^])(?=[\w"'-])|(?::|&#58;)(?=\/\/|[\w+-]+(?::|$))|\bwww(?=\.)|\bgh(?=-\d)/gi;

const NOTHING = '&#8203;';

/** To an address that is encoded; the text alone where something in it may mean more. */
export const markdownLink = (text: string, address: string): Markdown =>
  ENCODED.test(address) ? md`[${text}](${ownPiece<'markdown'>(address)})` : md`${text}`;

const ENCODED = /^[\w.~%/-]+$/;

export const markdownTable = (
  heading: readonly string[],
  rows: readonly (readonly (string | Markdown)[])[],
): Markdown =>
  joined(
    [
      rowOf(heading),
      md`| ${joined(
        heading.map(() => md`---`),
        BETWEEN,
      )} |`,
      ...rows.map(rowOf),
    ],
    md`\n`,
  );

const rowOf = (cells: readonly (string | Markdown)[]): Markdown =>
  md`| ${joined(
    cells.map((each) => md`${each}`),
    BETWEEN,
  )} |`;

const BETWEEN = md` | `;

export const markdownList = (items: readonly (string | Markdown)[], mark = md`- `): Markdown =>
  joined(
    items.map((each) => md`${mark}${each}`),
    md`\n`,
  );

/** Lines as they stand, in a fence that none of them can close. */
export function codeBlock(lines: readonly Line[]): Markdown {
  const text = writtenLines(lines);
  const longest = Math.max(2, ...(text.match(/`+/g) ?? []).map((run) => run.length));
  const fence = '`'.repeat(longest + 1);
  return ownPiece(`${fence}text\n${text}${fence}`);
}

/** Blocks with an empty line between them. */
export const writtenMarkdown = (blocks: readonly Markdown[]): Written =>
  letOut(md`${joined(blocks, md`\n\n`)}\n`.source);
