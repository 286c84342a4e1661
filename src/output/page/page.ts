import { writtenHtml } from '../escape/html.ts';
import type { Written } from '../escape/language.ts';
import { MOST_REASONS, type Sheet } from '../report/sheet.ts';
import { sectionElement } from './blocks.ts';
import { type Child, type Element, element } from './element.ts';
import { SCRIPT } from './script.ts';
import { styleOf } from './style.ts';

/** What a page is made with beside its sheet. */
export interface PageOptions {
  /** The digest of a text by SHA-256, in base 64: a page runs and wears nothing that its own head does not name. */
  readonly digest: (text: string) => string;
  /** A4 or Letter, where a printer is not to choose. */
  readonly paper?: string | undefined;
}

/** A sheet as one file: nothing in it is fetched, and it can be read without its script. */
export function sheetHtml(sheet: Sheet, options: PageOptions): Written {
  const { title, about, status, sections, cautions, facts } = sheet;
  const said = (name: string): string => facts.find((each) => each.name === name)?.value ?? '';
  const running = {
    head: [title, about].join(': '),
    status: status?.isOpen ? status.text : '',
    foot: [said('as of'), said('commit') && `commit ${said('commit')}`].filter(Boolean).join(', '),
    paper: options.paper,
  };
  return writtenHtml(
    whole(
      `${title}: ${about}`,
      styleOf(running),
      options,
      headElement(sheet),
      element(
        'main',
        {},
        ...reasonElements(sheet),
        element('div', { class: 'tools' }),
        ...sections.map(sectionElement),
      ),
      element('footer', {}, element('ul', {}, ...cautions.map((each) => element('li', {}, each)))),
    ),
  );
}

export const whole = (
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

const headElement = ({ title, about, facts, status, verdict }: Sheet): Element =>
  element(
    'header',
    { class: 'head' },
    element('h1', {}, title),
    element('p', { class: 'about' }, about),
    status && element('p', { class: status.isOpen ? 'status open' : 'status' }, status.text),
    verdict === '' ? undefined : element('p', { class: 'verdict' }, verdict),
    facts.length === 0
      ? undefined
      : element(
          'dl',
          { class: 'facts' },
          ...facts.map(({ name, value }) =>
            element('div', {}, element('dt', {}, name), element('dd', {}, value)),
          ),
        ),
  );

function reasonElements({ reasons }: Sheet): readonly Element[] {
  if (reasons.length === 0) return [];
  const isMore = reasons.length > MOST_REASONS;
  const shown = isMore ? reasons.slice(0, MOST_REASONS - 1) : reasons;
  const more = isMore ? [`and ${reasons.length - shown.length} more, below`] : [];
  return [
    element('h2', {}, 'Open'),
    element('ul', { class: 'reasons' }, ...[...shown, ...more].map((each) => element('li', {}, each))),
  ];
}
