import type {
  Block,
  Column,
  FieldsBlock,
  MeasureBlock,
  MeasureRow,
  PicturesBlock,
  SheetCell,
  SheetSection,
  TableBlock,
} from '../report/sheet.ts';
import { type Child, type Element, element } from './element.ts';
import { draw } from './pictures/pictures.ts';

export const sectionElement = ({ title, blocks }: SheetSection): Element =>
  element('section', {}, element('h2', {}, title), ...blocks.map(blockElement));

function blockElement(block: Block): Element {
  switch (block.kind) {
    case 'measure':
      return measureElement(block);
    case 'table':
      return tableElement(block);
    case 'pictures':
      return picturesElement(block.pictures);
    case 'fields':
      return fieldsElement(block);
    case 'list':
      return element('ul', {}, ...block.items.map((each) => element('li', {}, each)));
    case 'text':
      return element('div', {}, ...block.items.map((each) => element('p', {}, each)));
    case 'boxes':
    case 'blanks':
      return element('ul', { class: block.kind }, ...block.items.map((each) => element('li', {}, each)));
  }
}

/** A text, with what leads to another file as a link. */
export const cellChildren = (cell: SheetCell): readonly Child[] =>
  typeof cell === 'string'
    ? [cell]
    : cell.map(({ text, to }) => (to === undefined ? text : element('a', { href: to }, text)));

/** Folded to a line where that says it all. */
export const foldable = (folded: string | undefined, whole: Element): Element =>
  folded === undefined
    ? whole
    : element('details', {}, element('summary', { class: 'folded' }, folded), whole);

/** Scrolls by itself where a screen is narrow, by keyboard too. */
const scrolling = (label: string, table: Element): Element =>
  element('div', { class: 'wide', tabindex: 0, role: 'group', 'aria-label': label }, table);

function measureElement({ heading, limits, folded, rows, pictures }: MeasureBlock): Element {
  const has = (what: (row: MeasureRow) => unknown): boolean => rows.some((row) => Boolean(what(row)));
  const shown = {
    where: has(({ where }) => where),
    picture: has(({ picture }) => picture),
    verdict: has(({ verdict }) => verdict),
    before: has(({ before }) => before),
    notes: has(({ notes, others }) => notes || others.length > 0),
  };
  const heads = [
    ...(shown.where ? [element('th', { scope: 'col' }, 'position')] : []),
    element('th', { scope: 'col', class: 'figure' }, 'reading'),
    ...(shown.picture ? [element('th', { scope: 'col' }, 'where it lies')] : []),
    ...(shown.verdict ? [element('th', { scope: 'col' }, 'verdict')] : []),
    ...(shown.before ? [element('th', { scope: 'col', class: 'figure' }, 'before')] : []),
    ...(shown.notes ? [element('th', { scope: 'col' }, 'notes')] : []),
  ];
  const table = element(
    'table',
    {
      class: `measure${rows.length > 1 ? ' sorts' : ''}${rows.length > MOST_TOGETHER ? '' : ' short'}`,
      'data-measure': rows[0]?.measure,
    },
    element(
      'caption',
      {},
      heading,
      limits === '' ? undefined : element('span', { class: 'limits' }, ` ${limits}`),
    ),
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...rows.map((row) => measureRow(row, shown))),
  );
  const whole = [scrolling(heading, table), ...(pictures.length === 0 ? [] : [picturesElement(pictures)])];
  return foldable(folded, element('div', {}, ...whole));
}

type Shown = Readonly<Record<'where' | 'picture' | 'verdict' | 'before' | 'notes', boolean>>;

const measureRow = (row: MeasureRow, shown: Shown): Element =>
  element(
    'tr',
    { 'data-position': row.position },
    shown.where ? element('th', { scope: 'row' }, row.where) : undefined,
    element('td', { class: 'figure' }, row.reading),
    shown.picture ? element('td', { class: 'where' }, row.picture && draw(row.picture)) : undefined,
    shown.verdict ? element('td', { class: row.tone }, row.verdict) : undefined,
    shown.before ? element('td', { class: 'figure' }, row.before) : undefined,
    shown.notes
      ? element(
          'td',
          { class: 'notes' },
          row.notes,
          ...row.others.map((each) => element('span', { class: 'also' }, `also ${each}`)),
        )
      : undefined,
  );

function tableElement({ title, notes = [], columns, rows, folded }: TableBlock): Element {
  const cell = (of: SheetCell, index: number): Child =>
    element('td', { class: columnClass(columns[index]) }, ...cellChildren(of));
  const table = element(
    'table',
    { class: tableClass(columns, rows.length) },
    title === '' || notes.length > 0 ? undefined : element('caption', {}, title),
    element('thead', {}, element('tr', {}, ...columns.map((each) => headCell(each)))),
    element('tbody', {}, ...rows.map((row) => element('tr', {}, ...row.map(cell)))),
  );
  const whole = scrolling(title || 'table', table);
  return foldable(folded, notes.length === 0 ? whole : noted(title, notes, whole));
}

const fieldsElement = ({ title, notes, names }: FieldsBlock): Element =>
  noted(title, notes, element('ul', { class: 'fields' }, ...names.map((each) => element('li', {}, each))));

/** What is to be known before it is filled in stands above it, as wide as the page. */
const noted = (title: string, notes: readonly string[], below: Element): Element =>
  element('div', { class: 'readings' }, element('h3', {}, title), ...notes.map(noteElement), below);

const noteElement = (note: string): Element => element('span', { class: 'note' }, note);

/** A form is filled in by hand; a short table stays on one page. */
const tableClass = (columns: readonly Column[], count: number): string | undefined => {
  const isForm = columns.filter(({ isRoom }) => isRoom).length > 1;
  const isShort = count <= MOST_TOGETHER;
  const named = [isForm ? 'form' : count > 1 ? 'sorts' : '', isShort ? 'short' : ''].filter(Boolean);
  return named.length === 0 ? undefined : named.join(' ');
};

const MOST_TOGETHER = 12;

const columnClass = (column: Column | undefined): string | undefined =>
  column?.isRoom ? 'room' : column?.align === 'right' ? 'figure' : undefined;

/** A column without a heading is no heading. */
const headCell = (column: Column): Element =>
  column.title === ''
    ? element('td', {})
    : element('th', { scope: 'col', class: columnClass(column) }, column.title);

const picturesElement = (pictures: PicturesBlock['pictures']): Element =>
  element(
    'div',
    { class: 'pictures' },
    ...pictures.map((picture) =>
      element(
        'figure',
        {},
        draw(picture),
        element('figcaption', {}, `${picture.title}: ${picture.description}`),
      ),
    ),
  );
