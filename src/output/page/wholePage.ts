import { type Child, type Element, element } from './element.ts';
import { SCRIPT } from './script.ts';

/** What a page is made with beside its sheet. */
export interface PageOptions {
  /** The digest of a text by SHA-256, in base 64: a page runs and wears nothing that its own head does not name. */
  readonly digest: (text: string) => string;
  /** A4 or Letter, where a printer is not to choose. */
  readonly paper?: string | undefined;
}

/** What every page has round its own body: a policy that names its only style and script, and nothing to fetch. */
export const wholePage = (
  title: string,
  style: string,
  { digest }: PageOptions,
  ...body: readonly Child[]
): Element =>
  element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', { 'http-equiv': 'Content-Security-Policy', content: policy(style, digest) }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('meta', { name: 'generator', content: 'tenths report' }),
      element('meta', { name: 'referrer', content: 'no-referrer' }),
      element('title', {}, title),
      raw('style', style),
    ),
    element('body', {}, ...body, raw('script', SCRIPT)),
  );

const policy = (style: string, digest: PageOptions['digest']): string =>
  [
    "default-src 'none'",
    `style-src 'sha256-${digest(style)}'`,
    `script-src 'sha256-${digest(SCRIPT)}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');

/** Text that is ours alone: a style or a script, in which nothing is escaped. */
const raw = (name: 'style' | 'script', text: string): Element =>
  element(name, { dangerouslySetInnerHTML: { __html: text } });
