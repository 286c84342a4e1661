import { plural } from '../../quantity/words.ts';
import { writtenHtml } from '../escape/html.ts';
import type { Written } from '../escape/language.ts';
import type { Board, BoardPart, BoardRow, DueInstrument } from '../report/board.ts';
import { foldable } from './blocks.ts';
import { type Element, element } from './element.ts';
import { styleOf } from './style.ts';
import { type PageOptions, wholePage } from './wholePage.ts';

/** The index of a folder of sheets: static, for any web server. */
export function boardHtml({ title, about, rows, due, parts }: Board, options: PageOptions): Written {
  const open = rows.filter(({ isOpen }) => isOpen).length;
  const running = { head: title, status: '', foot: about, paper: undefined };
  return writtenHtml(
    wholePage(
      title,
      styleOf(running),
      options,
      element(
        'header',
        { class: 'head' },
        element('h1', {}, title),
        element('p', { class: 'about' }, about),
        element('p', { class: 'verdict' }, `${plural(rows.length, 'engine')}, ${open} not released`),
      ),
      element(
        'main',
        {},
        engineTable(rows),
        dueTable(due),
        element('div', { class: 'tools' }),
        partTable(parts),
      ),
    ),
  );
}

function engineTable(rows: readonly BoardRow[]): Element {
  const hasCustomers = rows.some(({ customer }) => customer !== undefined);
  const heads = [
    'engine',
    'status',
    'where it stands',
    'waits for',
    'since',
    ...(hasCustomers ? ['customer'] : []),
  ];
  return tableOf(
    'engines',
    heads,
    rows.map((row) =>
      element(
        'tr',
        { 'data-engine': row.folder },
        element(
          'th',
          { scope: 'row' },
          row.page === undefined ? row.name : element('a', { href: row.page }, row.name),
        ),
        element('td', { class: row.isOpen ? 'out' : 'quiet' }, row.status),
        element('td', {}, row.answer),
        element('td', {}, ...row.waiting.map((each) => element('div', {}, each))),
        element('td', { class: 'date' }, row.since),
        hasCustomers ? element('td', {}, row.customer) : undefined,
      ),
    ),
  );
}

const dueTable = (due: readonly DueInstrument[]): Element | undefined =>
  due.length === 0
    ? undefined
    : tableOf(
        'instruments due',
        ['instrument', 'type', 'due', 'state'],
        due.map(({ id, type, due: day, isOverdue }) =>
          element(
            'tr',
            {},
            element('th', { scope: 'row' }, id),
            element('td', {}, type),
            element('td', { class: 'date' }, day),
            element(
              'td',
              { class: isOverdue ? 'out' : 'quiet' },
              isOverdue ? 'overdue' : 'within two months',
            ),
          ),
        ),
      );

/** More of them than are looked over at once. */
const MANY_PARTS = 20;

const partTable = (parts: readonly BoardPart[]): Element | undefined =>
  parts.length === 0
    ? undefined
    : foldable(
        parts.length > MANY_PARTS ? `${parts.length} parts with a mark` : undefined,
        tableOf(
          'parts by their marks',
          ['part', 'mark', 'now'],
          parts.map(({ name, mark, now, page }) =>
            element(
              'tr',
              {},
              element('td', {}, name),
              element('th', { scope: 'row' }, element('a', { href: page }, mark)),
              element('td', {}, now),
            ),
          ),
        ),
      );

const tableOf = (title: string, heads: readonly string[], rows: readonly Element[]): Element =>
  element(
    'div',
    { class: 'wide', tabindex: 0, role: 'group', 'aria-label': title },
    element(
      'table',
      { class: rows.length > 1 ? 'sorts' : undefined },
      element('caption', {}, title),
      element('thead', {}, element('tr', {}, ...heads.map((each) => element('th', { scope: 'col' }, each)))),
      element('tbody', {}, ...rows),
    ),
  );
