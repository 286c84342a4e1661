import type { Engine } from '../../documents/assemble.ts';
import { ORDER_TIMES, type OrderLine, type OrderTime } from '../../plan/order/orderLine.ts';
import type { Page, PageCell, Section } from './page.ts';

/** What has to be bought, now and when sizes are known. */
export function orderPage(lines: readonly OrderLine[], engine: Engine, about: readonly string[]): Page {
  const { number, serial } = engine.document.job;
  const whose = [
    serial === undefined ? 'engine no. ____________' : `engine no. ${serial}`,
    ...(number === undefined ? [] : [`job ${number}`]),
  ];
  return {
    title: `${engine.document.name}: order list`,
    about: [whose.join(', '), ...about],
    answer: lines.length === 0 ? ['nothing is to be ordered'] : [counted(lines)],
    sections: [
      ...ORDER_TIMES.flatMap((when) => section(TITLES[when], lacking(lines, when))),
      ...section('on the shelf: none to order', lines.filter(isShelved)),
    ],
    cautions: lines.length === 0 ? [] : CAUTIONS,
  };
}

const TITLES: Readonly<Record<OrderTime, string>> = {
  now: 'order now',
  'after the yes': 'order after the customer’s yes',
  'after measuring': 'order after measuring: the size may still change',
};

const toOrder = ({ count, onShelf }: OrderLine): number => Math.max(0, count - onShelf);

const isShelved = (line: OrderLine): boolean => toOrder(line) === 0;

const lacking = (lines: readonly OrderLine[], when: OrderTime): readonly OrderLine[] =>
  lines.filter((line) => line.when === when && !isShelved(line));

function counted(lines: readonly OrderLine[]): string {
  const shelved = lines.filter(isShelved).length;
  const [yes, later] = (['after the yes', 'after measuring'] as const).map(
    (when) => lacking(lines, when).length,
  );
  const asked = yes === 0 ? '' : `${yes} after the customer’s yes, `;
  const rest = shelved === 0 ? '' : `, ${shelved} on the shelf`;
  return `${lacking(lines, 'now').length} to order now, ${asked}${later} after measuring${rest}`;
}

const CAUTIONS: readonly string[] = [
  'Part numbers are those that documents state; the maker’s parts list comes first.',
  'Ask for the size on the box, and measure what comes before anything is cut to it.',
];

function section(title: string, rows: readonly OrderLine[]): readonly Section[] {
  if (rows.length === 0) return [];
  return [
    {
      title,
      table: {
        columns: [
          { heading: '', key: undefined },
          { heading: 'order', key: 'to_order', align: 'right' },
          { heading: 'what', key: 'what' },
          { heading: 'size', key: 'size' },
          { heading: 'part number', key: 'part_number' },
          { heading: 'in stock', key: 'in_stock', align: 'right' },
          { heading: 'needed by', key: 'needed_by' },
          { heading: 'for', key: 'for' },
        ],
        rows: rows.map(orderRow),
      },
    },
  ];
}

function orderRow(line: OrderLine): readonly PageCell[] {
  const { what, size, code, count, onShelf, neededBy = '', isLate, waitsFor } = line;
  return [
    '[ ]',
    { text: String(toOrder(line)), value: toOrder(line) },
    what,
    size,
    code ?? { text: '________', value: null },
    { text: onShelf === 0 ? '' : `${onShelf} of ${count}`, value: onShelf },
    isLate === true ? { text: `${neededBy}, late`, value: neededBy } : neededBy,
    waitsFor === undefined ? line.for : `${line.for}: ${waitsFor}`,
  ];
}

/** The same for a spreadsheet. */
export const orderRows = (
  lines: readonly OrderLine[],
  { document: { name, job } }: Engine,
): readonly (readonly (string | number)[])[] => [
  [
    'engine',
    'serial',
    'job',
    'when',
    'to order',
    'needed',
    'what',
    'size',
    'part number',
    'in stock',
    'needed by',
    'for',
    'waits for',
  ],
  ...lines.map((line) => [
    name,
    job.serial ?? '',
    job.number ?? '',
    line.when,
    toOrder(line),
    line.count,
    line.what,
    line.size,
    line.code ?? '',
    line.onShelf,
    line.neededBy ?? '',
    line.for,
    line.waitsFor ?? '',
  ]),
];
