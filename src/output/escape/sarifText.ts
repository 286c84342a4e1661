import { visible } from './line.ts';

/**
 * Text of others in a message of a SARIF log (2.1.0, 3.11.5 and 3.11.6): braces would begin a placeholder, `[…](…)` would
 * be a link.
 */
export const sarifText = (text: string): string =>
  visible(text).replace(/[{}]/g, '$&$&').replaceAll('](', '\\](');

/** A path as a reference of a URI, which none of its characters can end. */
export const uriReference = (path: string): string =>
  path
    .split('/')
    .map((part) => encodeURIComponent(part.replace(/\p{Surrogate}/gu, '\ufffd')))
    .join('/');
