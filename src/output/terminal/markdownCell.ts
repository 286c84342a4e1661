import { visible } from './visible.ts';

const SPECIAL = /[\\`*_{}[\]()<>#+.!|~&@:/$^=-]/g;

/**
 * Text of a document, of git or of the command line inside Markdown: shown as it stands and never markup, a link, a
 * picture, a mention of a person or a number of something. Every character that may mean more is a numeric reference.
 */
export const markdownCell = (text: string): string =>
  visible(text)
    .replace(/\s+/g, ' ')
    .replace(SPECIAL, (character) => `&#${character.charCodeAt(0)};`);
