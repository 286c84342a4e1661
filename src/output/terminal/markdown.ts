import { visible } from './visible.ts';

/** Text of a document inside Markdown: shown as it stands, never as markup, a link or a picture. */
export const inMarkdown = (text: string): string => visible(text).replace(/[\\`*_{}[\]<>#|~!]/g, '\\$&');

/** A table of cells that are Markdown already. */
export const markdownTable = (heading: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heading, heading.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
