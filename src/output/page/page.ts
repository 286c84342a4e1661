import { writtenHtml } from '../escape/html.ts';
import type { Written } from '../escape/language.ts';
import { NO_COMMIT } from '../report/facts.ts';
import { MOST_REASONS, piecesText, type Sheet } from '../report/sheet.ts';
import { cellChildren, sectionElement } from './blocks.ts';
import { type Element, element } from './element.ts';
import { styleOf } from './style.ts';
import { type PageOptions, wholePage } from './wholePage.ts';

export { boardHtml } from './boardPage.ts';

/** A sheet as one file: nothing in it is fetched, and it can be read without its script. */
export function sheetHtml(sheet: Sheet, options: PageOptions): Written {
  const { title, about, status, sections, cautions, facts } = sheet;
  const said = (name: string): string => piecesText(facts.find((each) => each.name === name)?.value ?? '');
  const whole = [title, about].filter(Boolean).join(': ');
  const running = {
    head: sheet.isOneSide ? title : whole,
    status: status?.isOpen ? status.text : '',
    foot: [said('as of'), commitFoot(said('commit'))].filter(Boolean).join(', '),
    paper: options.paper,
  };
  return writtenHtml(
    wholePage(
      whole,
      styleOf(running),
      options,
      headElement(sheet),
      element(
        'main',
        { class: sheet.isOneSide ? 'one-side' : undefined },
        ...reasonElements(sheet),
        element('div', { class: 'tools' }),
        ...sections.map(sectionElement),
      ),
      element('footer', {}, element('ul', {}, ...cautions.map((each) => element('li', {}, each)))),
    ),
  );
}

const commitFoot = (said: string): string => (said === '' || said === NO_COMMIT ? '' : `commit ${said}`);

const headElement = ({ title, about, facts, status, verdict }: Sheet): Element =>
  element(
    'header',
    { class: 'head' },
    element('h1', {}, title),
    about === '' ? undefined : element('p', { class: 'about' }, about),
    status && element('p', { class: status.isOpen ? 'status open' : 'status' }, status.text),
    verdict === '' ? undefined : element('p', { class: 'verdict' }, verdict),
    facts.length === 0
      ? undefined
      : element(
          'dl',
          { class: 'facts' },
          ...facts.map(({ name, value }) =>
            element('div', {}, element('dt', {}, name), element('dd', {}, ...cellChildren(value))),
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
