import { crypto } from './lateModules.ts';

export const sha256 = (text: string): string =>
  crypto().createHash('sha256').update(text, 'utf8').digest('hex');

/** As a content security policy names it. */
export const sha256Base64 = (text: string): string =>
  crypto().createHash('sha256').update(text, 'utf8').digest('base64');
