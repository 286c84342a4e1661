import { createHash } from 'node:crypto';

export const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** As a content security policy names it. */
export const sha256Base64 = (text: string): string =>
  createHash('sha256').update(text, 'utf8').digest('base64');
